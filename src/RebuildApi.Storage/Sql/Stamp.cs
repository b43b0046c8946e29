using System.Globalization;

namespace RebuildApi.Storage.Sql;

/// <summary>Times as text of one width in UTC, so that their order as text is their order in time in every engine.</summary>
internal static class Stamp
{
    private const string Form = "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'";

    public static string Of(DateTimeOffset time) => time.UtcDateTime.ToString(Form, CultureInfo.InvariantCulture);

    public static DateTimeOffset Read(string text) =>
        DateTimeOffset.ParseExact(text, Form, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
}
