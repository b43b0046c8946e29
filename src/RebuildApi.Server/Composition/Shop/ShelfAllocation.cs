using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Allocation;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>
/// What the shelf can finish: each unit needs what its chosen plan puts in that did not come with it, single-use parts and pieces apart; a part of the shelf
/// would do where it conforms by itself and runs with everything else that the plan puts in.
/// </summary>
public sealed class ShelfAllocation(Bench bench, Judging judging)
{

    /// <summary>Which unit gets what.</summary>
    public async Task<AllocationWire> Of(AllocationRequest sent, CancellationToken cancellation)
    {
        var (store, now) = (bench.Store, bench.Time.GetUtcNow());
        var stock = await store.All<StockItem>(ShopFilter.Every, cancellation);
        var left = (sent.Without ?? []).ToHashSet(StringComparer.Ordinal);
        var shelf = stock.Where(s => s.Member is null && s.Count > 0 && !left.Contains(s.Id)).ToImmutableArray();
        var reservations = (await store.All<Reservation>(ShopFilter.Every, cancellation)).Where(r => r.Holds(now)).ToImmutableArray();
        var instruments = await store.Instruments(shelf, cancellation);
        var units = ImmutableArray.CreateBuilder<AllocationUnit>();
        var offers = ImmutableArray.CreateBuilder<AllocationOffer>();
        foreach (var (file, plan) in await Planned(sent, cancellation))
        {
            var view = await WithPlan(file, plan, now, cancellation);
            var needs = Needs(plan, view.Family);
            units.Add(new AllocationUnit(file.Unit.Id, needs));
            offers.AddRange(needs.SelectMany(place => Would(view, place, shelf, instruments).SelectMany(item =>
                Individuals(item, reservations).Select(p => new AllocationOffer(p.Id, file.Unit.Id, place, item.Price)))));
        }

        var problem = new AllocationProblem(units.ToImmutable(), [.. shelf.SelectMany(s => Individuals(s, reservations))], offers.ToImmutable());
        return Written(Allocator.Allocate(problem, cancellation), await store.Rates(cancellation));
    }

    private async Task<ImmutableArray<(UnitFile File, KeptPlan Plan)>> Planned(AllocationRequest sent, CancellationToken cancellation)
    {
        var choices = (await bench.Store.All<PlanChoice>(ShopFilter.Every, cancellation)).GroupBy(c => c.Unit, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last().Plan, StringComparer.Ordinal);
        var planned = ImmutableArray.CreateBuilder<(UnitFile, KeptPlan)>();
        var complaints = new Complaints();
        foreach (var (unit, i) in (sent.Units ?? [.. choices.Keys.Order(StringComparer.Ordinal)]).Distinct().Select((u, i) => (u, i)))
        {
            var file = await bench.Store.File(unit, cancellation);
            if (file is null || !choices.TryGetValue(unit, out var plan))
                complaints.Add($"/units/{i}", FieldProblems.UnknownRecord, $"There is no unit {unit} with a chosen plan.", unit);
            else if (sent.Units is not null || !UnitStages.IsGone(file.Unit.Stage))
                planned.Add((file, (await bench.Store.Find<KeptPlan>(plan, cancellation))!));
        }

        complaints.ThrowIfAny(Problems.InvalidContent);
        return planned.ToImmutable();
    }

    /// <summary>The unit as it would be with everything that its plan puts in.</summary>
    private async Task<UnitView> WithPlan(UnitFile file, KeptPlan plan, DateTimeOffset now, CancellationToken cancellation)
    {
        var view = judging.View(file);
        var offers = (await Offers.Of(bench.Store, view.Family, file.Unit.Id, now, cancellation)).Candidates.ToDictionary(c => c.Id, StringComparer.Ordinal);
        var snapshot = view.Snapshot;
        foreach (var line in PlanDesk.Read(plan).Lines.Where(l => l.Members.IsEmpty && offers.ContainsKey(l.Candidate)))
        {
            var place = Place.Parse(line.Position);
            var part = offers[line.Candidate].Part;
            var own = part with { Component = part.Component with { Id = $"{part.Component.Id}@{line.Position}" } };
            snapshot = CompatibilitySearch.Fit(Renamed(own), place.Position, place.Index, snapshot);
        }

        return new UnitView(snapshot, view.Family);
    }

    private static Candidate Renamed(Candidate part) => part with
    {
        Measurements = [.. part.Measurements.Select(m => m with { Id = $"{m.Id}@{part.Component.Id}", Component = part.Component.Id })],
        Findings = [.. part.Findings.Select(f => f with { Id = $"{f.Id}@{part.Component.Id}", Component = part.Component.Id })],
    };

    private static ImmutableArray<string> Needs(KeptPlan plan, FamilyIndex family) =>
        [.. PlanDesk.Read(plan).Lines.Where(l => l.Disposition == "replace" && l.Members.IsEmpty && !family.KindAt(Place.Parse(l.Position).Position)!.SingleUse).Select(l => l.Position)];

    private static IEnumerable<StockItem> Would(UnitView view, string at, ImmutableArray<StockItem> shelf, ImmutableArray<InstrumentState> instruments)
    {
        var place = Place.Parse(at);
        var kind = view.Family.KindAt(place.Position)!.Id;
        return shelf.Where(s => s.Family == view.Family.Family.Version.Id && s.Kind == kind).Where(s => Does(view, place, ShopCandidates.Of(s, instruments), s.Origin));
    }

    // A new part has no readings yet and stands on its drawing; a used one must be proven good.
    private static bool Does(UnitView view, Place place, Candidate part, Origin origin)
    {
        var book = new EstimateBook(new UnitView(CompatibilitySearch.Fit(part, place.Position, place.Index, view.Snapshot), view.Family));
        var placed = book.View.At(place.Position).First(p => p.Placement.Index == place.Index);
        var outcome = PartJudge.Judge(placed, book).Outcome;
        if (outcome == Outcome.Nonconforming || (origin != Origin.New && outcome != Outcome.Conforming))
            return false;
        var verdict = CompatibilitySearch.For(place.Position, [part], new EstimateBook(view), place.Index).Single();
        return verdict.Pairings.IsEmpty || verdict.Outcome is Compatibility.Compatible or Compatibility.Conditional;
    }

    /// <summary>Each of several alike is a part of its own; those that are kept for a unit go to that one only.</summary>
    private static IEnumerable<AllocationPart> Individuals(StockItem item, ImmutableArray<Reservation> reservations)
    {
        const int most = 100;
        var kept = reservations.Where(r => r.Stock == item.Id).SelectMany(r => Enumerable.Repeat(r.Unit, r.Count)).ToArray();
        return Enumerable.Range(0, Math.Min(item.Count, most))
            .Select(i => new AllocationPart(i == 0 ? item.Id : FormattableString.Invariant($"{item.Id}#{i + 1}"), i < kept.Length ? kept[i] : null, item.Set));
    }

    private static AllocationWire Written(AllocationAnswer found, Rates rates) => new(
        found.Completed,
        [.. found.Assigned.Select(a => new AssignedWire(a.Part.Split('#')[0], a.Unit, a.Place, MoneyWire.Of(a.Cost, rates)))],
        MoneyWire.Of(found.Cost, rates), found.IsProven, found.MostUnits,
        [.. found.Misses.Select(m => new AllocationMissWire(m.Unit, m.Lacking, Engine.Reasons.ReasonText.Words(m.Reason)))],
        [.. found.Purchases.Select(p => new AllocationPurchaseWire(p.Place, p.Units, Engine.Reasons.ReasonText.Words(p.Reason)))],
        [.. found.Reasons.Select(Wire.ReasonWire.From)],
        Cautions.Standing);
}
