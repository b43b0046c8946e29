using System.Runtime.CompilerServices;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>Everything that the shop has recorded, unit by unit.</summary>
public sealed class ShopHistory(IStore store, FamilyBook families)
{
    private const int UnitsAtOnce = 200;
    private const int MeasurementsAtOnce = 500;

    /// <summary>The files of all units, in the order of their ids; of one family, or of all.</summary>
    public async IAsyncEnumerable<UnitFile> Files(string? family, [EnumeratorCancellation] CancellationToken cancellation)
    {
        await foreach (var unit in Units(family, cancellation))
        {
            if (await store.File(unit.Id, cancellation) is { } file)
                yield return file;
        }
    }

    /// <summary>All units, in the order of their ids; of one family, or of all.</summary>
    public async IAsyncEnumerable<Unit> Units(string? family, [EnumeratorCancellation] CancellationToken cancellation)
    {
        string? after = null;
        do
        {
            var page = await store.Units(after, UnitsAtOnce, null, cancellation);
            foreach (var unit in page.Items.Where(u => family is null || u.Family.Id == family))
                yield return unit;
            after = page.Next;
        }
        while (after is not null);
    }

    /// <summary>Measurements that stand, over all units; of one part, or of all.</summary>
    public async IAsyncEnumerable<Measurement> Measurements(string? component, [EnumeratorCancellation] CancellationToken cancellation)
    {
        string? after = null;
        do
        {
            var page = await store.Measurements(component, after, MeasurementsAtOnce, cancellation);
            foreach (var measurement in page.Items)
                yield return measurement;
            after = page.Next;
        }
        while (after is not null);
    }

    /// <summary>A unit through the edition of the rules that it is pinned to; null when that is not loaded.</summary>
    public UnitView? ViewOf(UnitFile file) =>
        families.Pinned(file.Unit.Family, out _) is { } family ? new UnitView(UnitSnapshots.Of(file), family) : null;
}
