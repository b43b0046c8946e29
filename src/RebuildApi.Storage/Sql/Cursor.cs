using System.Buffers.Text;
using System.Collections.Immutable;
using System.Text;

namespace RebuildApi.Storage.Sql;

/// <summary>Where a page begins: the last id of the one before, so that what is added or removed meanwhile shifts nothing.</summary>
internal static class Cursor
{
    private const int LongestPage = 1000;

    /// <summary>The id after which to go on; empty, which comes before every id, to begin.</summary>
    public static string After(string? cursor)
    {
        if (cursor is null)
            return "";
        if (cursor.Length == 0 || !Base64Url.IsValid(cursor))
            throw new UnknownCursorException(cursor);
        return Encoding.UTF8.GetString(Base64Url.DecodeFromChars(cursor));
    }

    public static int Limit(int limit) => Math.Clamp(limit, 1, LongestPage);

    /// <summary>A page of rows of which one more than <paramref name="limit"/> was asked for.</summary>
    public static Page<T> Page<T>(IEnumerable<T> rows, int limit, Func<T, string> id)
    {
        var items = rows.ToImmutableArray();
        if (items.Length <= limit)
            return new Page<T>(items, null);
        return new Page<T>(items[..limit], Base64Url.EncodeToString(Encoding.UTF8.GetBytes(id(items[limit - 1]))));
    }
}
