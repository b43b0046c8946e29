using System.Collections.Immutable;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Results;

/// <summary>Reads one page of a list that begins after an id.</summary>
public delegate ValueTask<Page<T>> PageReader<T>(string? after, int limit, CancellationToken cancellation);

/// <summary>Pages of lists that are at hand.</summary>
public static class PagesOf
{
    /// <summary>Cuts a whole list into pages by the key of its entries.</summary>
    public static PageReader<T> Whole<T>(ImmutableArray<T> all, Func<T, string> key) => (after, limit, _) =>
    {
        var start = 0;
        if (after is not null)
        {
            start = all.FindIndex(item => key(item) == after) + 1;
            if (start == 0)
                throw Cursor.Bad(after);
        }

        var items = all.AsSpan(start, Math.Min(limit, all.Length - start)).ToImmutableArray();
        var next = start + items.Length < all.Length ? key(items[^1]) : null;
        return ValueTask.FromResult(new Page<T>(items, next));
    };

    /// <summary>The same pages with each entry turned into another.</summary>
    public static PageReader<TWire> Select<T, TWire>(this PageReader<T> pages, Func<T, TWire> wire) => async (after, limit, cancellation) =>
    {
        var page = await pages(after, limit, cancellation);
        return new Page<TWire>([.. page.Items.Select(wire)], page.Next);
    };

    private static int FindIndex<T>(this ImmutableArray<T> items, Predicate<T> match)
    {
        for (var i = 0; i < items.Length; i++)
        {
            if (match(items[i]))
                return i;
        }

        return -1;
    }
}
