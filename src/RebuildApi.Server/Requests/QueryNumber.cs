using RebuildApi.Contracts;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>Numbers in query parameters, exact as in bodies.</summary>
public static class QueryNumber
{
    /// <summary>A length with its unit, as <c>30.002mm</c> or <c>0.015 in</c>; null when it was not sent.</summary>
    public static Length? Length(HttpContext http, string name)
    {
        if (QueryText.Of(http, name) is not { } text)
            return null;
        var digits = text.TakeWhile(c => char.IsAsciiDigit(c) || c is '.' or '-').Count();
        var number = new SentNumber(text[..digits]);
        var complaints = new Complaints();
        if (digits > 0 && number.TryGetDecimal(out _) && Quantities.Read(number, text[digits..].Trim(), Dimension.Length, "", complaints) is Exact exact)
            return exact.Value;
        var why = complaints.Any ? complaints.Errors[0].Message : "The parameter is a number with its unit.";
        throw QueryText.Wrong(name, FieldProblems.OutOfRange, why, text, ["30.002mm", "0.015in"]);
    }

    /// <summary>A whole number between two ends, which must be sent.</summary>
    public static int Whole(HttpContext http, string name, int low, int high)
    {
        var text = QueryText.Of(http, name);
        return int.TryParse(text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var number) && number >= low && number <= high
            ? number
            : throw QueryText.Wrong(name, FieldProblems.OutOfRange, FormattableString.Invariant($"The parameter is a whole number from {low} to {high}."), text);
    }
}
