using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>The plan that a unit goes by: the one that a person chose, or else the newest that has an answer.</summary>
/// <param name="Kept">The plan as it is kept.</param>
/// <param name="Choice">Who chose it; none when nobody has yet.</param>
public sealed record UnitPlan(KeptPlan Kept, PlanChoice? Choice)
{
    /// <summary>The plan as it was answered.</summary>
    public PlanWire Answer { get; } = PlanDesk.Read(Kept);

    /// <summary>Finds it; null when nothing was planned yet.</summary>
    /// <param name="store">Where plans are kept.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="id">A plan that was asked for by its id.</param>
    /// <param name="cancellation">Stops it.</param>
    public static async Task<UnitPlan?> Of(IStore store, string unit, string? id, CancellationToken cancellation)
    {
        var choice = await store.Newest<PlanChoice>(new ShopFilter(unit), cancellation);
        var named = id ?? choice?.Plan;
        var kept = named is null
            ? (await store.All<KeptPlan>(new ShopFilter(unit), cancellation)).LastOrDefault(p => !p.Lines.IsEmpty)
            : await store.Find<KeptPlan>(named, cancellation);
        return kept is not null && kept.Unit == unit ? new UnitPlan(kept, choice?.Plan == kept.Id ? choice : null) : null;
    }
}
