using System.Collections.Immutable;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>All that a gate is held against.</summary>
/// <param name="Judged">The unit as it is judged now.</param>
/// <param name="Tests">The tests that were tried, oldest first.</param>
/// <param name="SignOffs">What was signed for, oldest first.</param>
/// <param name="Passings">The way so far, oldest first.</param>
/// <param name="Standing">Where the agreement with the customer stands; none before anything was quoted.</param>
/// <param name="HasPlan">Whether a plan was chosen.</param>
public sealed record GateFacts(
    Judged Judged, ImmutableArray<TestDone> Tests, ImmutableArray<SignOff> SignOffs, ImmutableArray<StagePassing> Passings, Standing? Standing, bool HasPlan)
{
    /// <summary>What is stored of the unit.</summary>
    public UnitFile File => Judged.File;

    /// <summary>When the unit last came to a stage, or went back beyond it; null when it never did.</summary>
    public DateTimeOffset? Since(string stage) => Passings.LastOrDefault(p => p.To == stage || UnitStages.IsBefore(p.To, stage))?.Time;

    /// <summary>Inside a change.</summary>
    public static GateFacts Of(IWriteSession session, Judged judged)
    {
        var unit = judged.File.Unit.Id;
        return new(
            judged, session.All<TestDone>(unit), session.All<SignOff>(unit), session.All<StagePassing>(unit), Shop.Standing.Of(session, unit), session.Newest<PlanChoice>(unit) is not null);
    }

    /// <summary>As it is stored.</summary>
    public static async ValueTask<GateFacts> Of(IStore store, Judged judged, CancellationToken cancellation)
    {
        var of = new ShopFilter(judged.File.Unit.Id);
        return new(
            judged,
            await store.All<TestDone>(of, cancellation),
            await store.All<SignOff>(of, cancellation),
            await store.All<StagePassing>(of, cancellation),
            await Shop.Standing.Of(store, judged.File.Unit.Id, cancellation),
            await store.Newest<PlanChoice>(of, cancellation) is not null);
    }
}
