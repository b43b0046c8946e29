using System.Globalization;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>Reads query parameters one by one, saying what each may be.</summary>
public static class QueryText
{
    /// <summary>The value, or null when it was not sent.</summary>
    /// <exception cref="ProblemException">It was sent twice.</exception>
    public static string? Of(HttpContext http, string name)
    {
        var values = http.Request.Query[name];
        if (values.Count <= 1)
            return values.ToString() is { Length: > 0 } text ? text : null;
        throw Wrong(name, FieldProblems.DuplicateField, "The parameter is there twice.", values.ToString());
    }

    /// <summary>Whether a flag is set.</summary>
    public static bool Flag(HttpContext http, string name) => Of(http, name) switch
    {
        null or "false" or "0" => false,
        "true" or "1" => true,
        var other => throw Wrong(name, FieldProblems.NotAllowed, "The parameter is true or false.", other, ["true", "false"]),
    };

    /// <summary>One of a few words, or null.</summary>
    public static string? Word(HttpContext http, string name, params string[] words)
    {
        var text = Of(http, name);
        return text is null || words.Contains(text, StringComparer.Ordinal)
            ? text
            : throw Wrong(name, FieldProblems.NotAllowed, $"The parameter is one of: {string.Join(", ", words)}.", text, words);
    }

    /// <summary>A whole number from 1; larger ones are brought down to the most that is given.</summary>
    public static int Count(HttpContext http, string name, int usual, int most)
    {
        var text = Of(http, name);
        if (text is null)
            return usual;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count > 0
            ? Math.Min(count, most)
            : throw Wrong(name, FieldProblems.OutOfRange, $"The parameter is a whole number from 1 to {most}.", text);
    }

    /// <summary>The problem of one parameter.</summary>
    public static ProblemException Wrong(string name, Problem kind, string message, string? got, string[]? allowed = null, string? fix = null) =>
        QueryFault.Of(name, kind, message, got, allowed, fix);
}
