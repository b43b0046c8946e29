using System.Globalization;

namespace RebuildApi.Server.Access;

/// <summary>From when a token no longer counts, as a person says it: <c>90d</c>, <c>12h</c> or a day.</summary>
public static class Expiry
{
    private const int MostDays = 36_500;

    /// <summary>The time; null when the words are none, or name one that has passed.</summary>
    public static DateTimeOffset? Of(string words, DateTimeOffset now)
    {
        if (DateTimeOffset.TryParseExact(words, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var day))
            return day > now ? day : null;
        if (words.Length < 2 || !int.TryParse(words[..^1], NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count is 0 or > MostDays)
            return null;
        return words[^1] switch
        {
            'd' => now.AddDays(count),
            'h' => now.AddHours(count),
            _ => null,
        };
    }
}
