using System.Globalization;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>A moment from which on something counts.</summary>
public static class Since
{
    private const string Name = "since";
    private static readonly string[] Forms = ["yyyy-MM-dd", "yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mmK"];

    /// <summary>The query parameter.</summary>
    public static readonly QueryOption Option = new(Name, "The first moment that counts: a day (2026-03-02, from midnight UTC) or a time with its offset.", Required: true);

    /// <summary>The moment, UTC.</summary>
    /// <exception cref="ProblemException">It is missing, or is none.</exception>
    public static DateTimeOffset Of(HttpContext http)
    {
        var text = QueryText.Of(http, Name) ?? throw QueryText.Wrong(Name, FieldProblems.MissingField, "The parameter is missing.", null, ["2026-03-02"]);
        return DateTimeOffset.TryParseExact(text, Forms, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var moment)
            ? moment
            : throw QueryText.Wrong(Name, FieldProblems.BadTime, "This is not a day, nor a time with an offset.", text, ["2026-03-02", "2026-03-02T12:00:00Z"]);
    }
}
