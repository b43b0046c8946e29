namespace RebuildApi.Server.Requests.Tables;

/// <summary>One cell of a table (RFC 4180), safe to open in a spreadsheet.</summary>
public static class CsvCell
{
    private const string Starts = "=+-@\t\r";

    /// <summary>Text: what a spreadsheet would take for a formula gets an apostrophe in front.</summary>
    public static string Text(string text, char separator) => Quoted(IsFormula(text) ? "'" + text : text, separator);

    /// <summary>A number: left alone, so that -0.012 stays a number.</summary>
    public static string Number(string number, char separator) => Quoted(number, separator);

    /// <summary>Takes the apostrophe off again that <see cref="Text"/> put on.</summary>
    public static string Unguarded(string text) => text.Length > 1 && text[0] == '\'' && IsFormula(text[1..]) ? text[1..] : text;

    private static bool IsFormula(string text) => text.Length > 0 && Starts.Contains(text[0], StringComparison.Ordinal);

    private static string Quoted(string text, char separator) =>
        text.AsSpan().IndexOfAny([separator, '"', '\n', '\r']) < 0 && !text.StartsWith(' ') && !text.EndsWith(' ')
            ? text
            : "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
}
