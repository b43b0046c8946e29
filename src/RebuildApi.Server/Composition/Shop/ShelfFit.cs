using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>
/// Whether something on the shelf would do at a place of a unit: it conforms by itself, runs with everything else that the unit's plan puts in no worse than what
/// the plan puts there, and leaves no clearance that no ring or shim of the family brings right.
/// </summary>
/// <param name="Item">What lies on the shelf.</param>
/// <param name="Cost">Its price, and what its doubt is expected to cost; minor units.</param>
/// <param name="WhyNot">Why it would not do; none when it would.</param>
public sealed record ShelfFit(StockItem Item, long Cost, string? WhyNot)
{
    /// <summary>Everything of the right kind on the shelf.</summary>
    /// <param name="view">The unit as its plan would have it, rings and shims still open.</param>
    /// <param name="at">The place.</param>
    /// <param name="chosen">What the plan puts there: a person chose it, so its doubt stands and does not keep it out.</param>
    /// <param name="shelf">The shelf.</param>
    /// <param name="instruments">What it was read with.</param>
    /// <param name="rates">What a comeback costs.</param>
    public static ImmutableArray<ShelfFit> All(
        UnitView view, string at, string chosen, ImmutableArray<StockItem> shelf, ImmutableArray<InstrumentState> instruments, Rates rates)
    {
        var (place, family) = (Place.Parse(at), view.Family);
        var kind = family.KindAt(place.Position)!.Id;
        var planned = new EstimateBook(view);
        var (runs, right) = (family.PairingsAt(place.Position).ToDictionary(r => r.Id, r => PairingJudge.Outcome(r, planned), StringComparer.Ordinal), OfClearances(place, planned) is null);
        return [.. shelf.Where(s => s.Family == family.Family.Version.Id && s.Kind == kind).Select(s => Of(s, view, place, chosen == Offers.FromShelf + s.Id, runs, right, instruments, rates))];
    }

    private static ShelfFit Of(
        StockItem item, UnitView view, Place place, bool isChosen, Dictionary<string, Compatibility> runs, bool right, ImmutableArray<InstrumentState> instruments, Rates rates)
    {
        var part = ShopCandidates.Of(item, instruments);
        var book = new EstimateBook(new UnitView(CompatibilitySearch.Fit(part, place.Position, place.Index, view.Snapshot), view.Family));
        var answer = PartJudge.Judge(book.View.At(place.Position).First(p => p.Placement.Index == place.Index), book);
        var risk = 1 - answer.Verdicts.Aggregate(1.0, (chance, v) => chance * (v.Outcome == Outcome.NotAssessed ? 1 : v.Probability ?? 1));
        return new ShelfFit(
            item, item.Price + (long)Math.Round((decimal)risk * rates.ComebackCost, MidpointRounding.AwayFromZero),
            OfPart(answer, item, isChosen, view.Family) ?? OfPairings(part, place, view, runs) ?? (right ? OfClearances(place, book) : null));
    }

    /// <summary>A new part has no readings yet and stands on its drawing; a used one must be proven good.</summary>
    private static string? OfPart(PartAnswer answer, StockItem item, bool isChosen, FamilyIndex family)
    {
        var isOpen = item.Origin != Origin.New && !isChosen && answer.Outcome != Outcome.Conforming;
        return answer.Outcome != Outcome.Nonconforming && !isOpen ? null
            : Words(family, answer.Verdicts.Prepend(answer.Condition).Where(v => v.Outcome == answer.Outcome).SelectMany(v => v.Reasons));
    }

    /// <summary>A pairing that is broken, or is open though it is not with the part that the plan puts there.</summary>
    private static string? OfPairings(Candidate part, Place place, UnitView view, Dictionary<string, Compatibility> runs)
    {
        var verdict = CompatibilitySearch.For(place.Position, [part], new EstimateBook(view), place.Index).Single();
        var worse = verdict.Pairings.Where(p => p.Outcome == Compatibility.Incompatible || (p.Outcome == Compatibility.NotAssessed && runs[p.Rule] != Compatibility.NotAssessed)).ToArray();
        return worse.Length == 0 ? null : Words(view.Family, worse.SelectMany(p => p.Reasons));
    }

    private static string? OfClearances(Place place, EstimateBook book) => book.View.Family.Family.Loops
        .Where(l => l.Terms.Any(t => t.Of is OfPart p && p.At.Position == place.Position))
        .Select(l => ClearanceJudge.Judge(l, book))
        .Where(c => c.Verdict.Outcome == Outcome.Nonconforming || c.Ring?.Outcome == RingOutcome.NothingFits)
        .Select(c => Words(book.View.Family, (c.Ring?.Reasons ?? []).Concat(c.Verdict.Reasons))).FirstOrDefault();

    private static string Words(FamilyIndex family, IEnumerable<Reason> reasons) => string.Join(' ', reasons.Take(2).Select(family.Say));
}
