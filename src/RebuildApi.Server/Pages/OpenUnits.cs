using System.Collections.Immutable;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>The units that are still in the shop.</summary>
public static class OpenUnits
{
    private const int AtOnce = 500;

    /// <summary>All of them, the one that was taken in first first.</summary>
    public static async Task<ImmutableArray<Unit>> Of(IStore store, CancellationToken cancellation)
    {
        var open = ImmutableArray.CreateBuilder<Unit>();
        string? after = null;
        do
        {
            var page = await store.Units(after, AtOnce, null, cancellation);
            open.AddRange(page.Items.Where(u => !UnitStages.IsGone(u.Stage)));
            after = page.Next;
        }
        while (after is not null);
        return [.. open.OrderBy(u => u.Opened).ThenBy(u => u.Id, StringComparer.Ordinal)];
    }
}
