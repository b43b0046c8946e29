using System.Globalization;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>A moment from which on something counts.</summary>
public static class Since
{
    private static readonly string[] Forms = ["yyyy-MM-dd", "yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mmK"];

    /// <summary>The query parameter.</summary>
    public static readonly QueryOption Optional = new("since", "The first moment that counts: a day (2026-03-02, from midnight UTC) or a time with its offset.");

    /// <summary>The query parameter for where it ends.</summary>
    public static readonly QueryOption Until = new("until", "The last moment that counts, in the same forms; everything that follows when not said.");

    /// <summary>The moment, UTC; null when it was not sent.</summary>
    /// <exception cref="ProblemException">It is none.</exception>
    public static DateTimeOffset? Maybe(HttpContext http, string name)
    {
        if (QueryText.Of(http, name) is not { } text)
            return null;
        return DateTimeOffset.TryParseExact(text, Forms, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var moment)
            ? moment
            : throw QueryText.Wrong(name, FieldProblems.BadTime, "This is not a day, nor a time with an offset.", text, ["2026-03-02", "2026-03-02T12:00:00Z"]);
    }
}
