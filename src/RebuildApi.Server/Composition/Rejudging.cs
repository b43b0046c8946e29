using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Text.Json;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;
using RebuildApi.PluginHost;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>
/// Judges the shop's units again under other rules than those that spoke, and says which verdicts would come out otherwise. Nothing is stored. Where the edition that
/// a unit is pinned to is loaded, its records are judged under both; where it is not, the last judgement that someone relied on is compared, on the
/// snapshot it was made from.
/// </summary>
public sealed class Rejudging(ShopHistory history, FamilyBook families, IStore store, IPluginCatalog catalog)
{
    /// <summary>All units of the family, in the order of their ids, one at a time.</summary>
    public async IAsyncEnumerable<RejudgedUnit> Units(FamilyIndex proposed, [EnumeratorCancellation] CancellationToken cancellation)
    {
        await foreach (var file in history.Files(proposed.Family.Version.Id, cancellation))
            yield return await Unit(file, proposed, cancellation);
    }

    /// <summary>One unit.</summary>
    public async Task<RejudgedUnit> Unit(UnitFile file, FamilyIndex proposed, CancellationToken cancellation)
    {
        var snapshot = UnitSnapshots.Of(file);
        if (families.Pinned(file.Unit.Family, out var whyNot) is { } pinned)
            return Compared(file.Unit.Id, "records", SpokenVerdict.Of(Judge(snapshot, pinned), pinned), snapshot, proposed);
        if (await store.LatestJudgement(file.Unit.Id, null, cancellation) is not { } kept)
            return new RejudgedUnit(file.Unit.Id, null, [], whyNot + " No judgement of it was kept.");
        var then = JsonSerializer.Deserialize(kept.Snapshot.Span, ContractJson.Default.UnitSnapshot)!;
        return Compared(file.Unit.Id, kept.Kept.Id, SpokenVerdict.Of(kept.Body), then, proposed);
    }

    private RejudgedUnit Compared(string unit, string basis, ImmutableArray<SpokenVerdict> before, UnitSnapshot snapshot, FamilyIndex proposed)
    {
        var after = SpokenVerdict.Of(Judge(snapshot with { Family = proposed.Family.Version }, proposed), proposed);
        return new RejudgedUnit(unit, basis, VerdictChange.Between(before, after), null);
    }

    private Engine.Judging.Judgement Judge(UnitSnapshot snapshot, FamilyIndex family) =>
        UnitJudge.Judge(new UnitView(snapshot, family), new CatalogHooks(catalog, family));
}

/// <summary>What came of judging a unit again.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Basis">What was judged: <c>records</c>, or the id of the kept judgement; null when nothing could be compared.</param>
/// <param name="Changes">The verdicts that would come out otherwise.</param>
/// <param name="WhyNot">Why nothing could be compared.</param>
public sealed record RejudgedUnit(string Unit, string? Basis, ImmutableArray<VerdictChange> Changes, string? WhyNot)
{
    /// <summary>The lines of its answer.</summary>
    public IEnumerable<RejudgementLine> Lines() => WhyNot is not null
        ? [new(Unit, null, null, WhyNot, null)]
        : Changes.Select(c => new RejudgementLine(Unit, Basis, c.Wire(), null, null));
}
