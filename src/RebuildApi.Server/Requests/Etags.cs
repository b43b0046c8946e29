using System.Globalization;

namespace RebuildApi.Server.Requests;

/// <summary>Entity tags from row versions: <c>"u-4"</c> is the fourth version of a unit, whatever form it is shown in.</summary>
public static class Etags
{
    /// <summary>The tag of a unit, and of everything that changes with it.</summary>
    public const char Unit = 'u';

    /// <summary>The tag of an instrument.</summary>
    public const char Instrument = 'i';

    /// <summary>The tag of the shop's policy.</summary>
    public const char Policy = 'p';

    /// <summary>The tag of how the shop charges.</summary>
    public const char Rates = 'r';

    /// <summary>The tag of a part of the price list.</summary>
    public const char Part = 'c';

    /// <summary>The tag of something on the shelf.</summary>
    public const char Stock = 's';

    /// <summary>The tag of a reservation.</summary>
    public const char Reservation = 'v';

    /// <summary>The tag of a part that is out to be machined.</summary>
    public const char Machining = 'm';

    /// <summary>The tag of a receiver of webhooks.</summary>
    public const char Webhook = 'w';

    /// <summary>Writes a tag.</summary>
    public static string Of(char prefix, long version) => string.Create(CultureInfo.InvariantCulture, $"\"{prefix}-{version}\"");

    /// <summary>A tag from hashes, for answers that are worked out.</summary>
    public static string OfHash(params ReadOnlySpan<string> hashes)
    {
        var text = string.Join('-', hashes.ToArray().Select(h => h.Length > 16 ? h[..16] : h));
        return $"\"{text}\"";
    }

    /// <summary>The tag of a file: its whole hash.</summary>
    public static string OfFile(string sha256) => $"\"{sha256}\"";

    /// <summary>Reads a tag; null when it is not one of this prefix.</summary>
    public static long? VersionOf(string tag, char prefix)
    {
        if (tag.Length < 5 || tag[0] != '"' || tag[1] != prefix || tag[2] != '-' || tag[^1] != '"')
            return null;
        return long.TryParse(tag.AsSpan(3, tag.Length - 4), NumberStyles.None, CultureInfo.InvariantCulture, out var version) ? version : null;
    }
}
