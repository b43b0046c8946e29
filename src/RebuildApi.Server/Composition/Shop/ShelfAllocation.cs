using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Allocation;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>
/// What the shelf can finish: each unit needs what its chosen plan puts in that did not come with it, single-use parts and pieces apart. A part of the shelf
/// costs its price and what its doubt is expected to cost.
/// </summary>
public sealed class ShelfAllocation(Bench bench, Judging judging)
{

    /// <summary>Which unit gets what.</summary>
    public async Task<AllocationWire> Of(AllocationRequest sent, CancellationToken cancellation)
    {
        var (store, now) = (bench.Store, bench.Time.GetUtcNow());
        var stock = await store.All<StockItem>(ShopFilter.Every, cancellation);
        var left = (sent.Without ?? []).ToHashSet(StringComparer.Ordinal);
        // A set of which one part is gone or left out is no set any more: what is left of it stays where it is.
        var split = stock.Where(s => s.Set is not null && (s.Count == 0 || left.Contains(s.Id))).Select(s => s.Set).ToHashSet(StringComparer.Ordinal);
        var shelf = stock.Where(s => s.Member is null && s.Count > 0 && !left.Contains(s.Id) && !split.Contains(s.Set)).ToImmutableArray();
        var reservations = (await store.All<Reservation>(ShopFilter.Every, cancellation)).Where(r => r.Holds(now)).ToImmutableArray();
        var instruments = await store.Instruments(shelf, cancellation);
        var rates = await store.Rates(cancellation);
        var units = ImmutableArray.CreateBuilder<AllocationUnit>();
        var offers = ImmutableArray.CreateBuilder<AllocationOffer>();
        var near = new Dictionary<(string Unit, string Place), ImmutableArray<ShelfFit>>();
        foreach (var (file, plan) in await Planned(sent, cancellation))
        {
            var view = await WithPlan(file, plan, now, cancellation);
            var needs = Needs(plan, view.Family);
            units.Add(new AllocationUnit(file.Unit.Id, [.. needs.Select(n => n.Position)]));
            foreach (var (place, chosen) in needs)
            {
                var fits = near[(file.Unit.Id, place)] = ShelfFit.All(view, place, chosen, shelf, instruments, rates);
                offers.AddRange(fits.Where(f => f.WhyNot is null).SelectMany(f => Individuals(f.Item, reservations).Select(p => new AllocationOffer(p.Id, file.Unit.Id, place, f.Cost))));
            }
        }

        var problem = new AllocationProblem(units.ToImmutable(), [.. shelf.SelectMany(s => Individuals(s, reservations))], offers.ToImmutable());
        return new AllocationSheet(rates, near, reservations).Of(Allocator.Allocate(problem, cancellation));
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

    /// <summary>The places, each with what the plan puts there.</summary>
    private static ImmutableArray<(string Position, string Candidate)> Needs(KeptPlan plan, FamilyIndex family) =>
    [
        .. PlanDesk.Read(plan).Lines.Where(l => l.Disposition == "replace" && l.Members.IsEmpty && !family.KindAt(Place.Parse(l.Position).Position)!.SingleUse)
            .Select(l => (l.Position, l.Candidate)),
    ];

    /// <summary>Each of several alike is a part of its own; those that are kept for a unit go to that one only.</summary>
    private static IEnumerable<AllocationPart> Individuals(StockItem item, ImmutableArray<Reservation> reservations)
    {
        const int most = 100;
        var kept = reservations.Where(r => r.Stock == item.Id).SelectMany(r => Enumerable.Repeat(r.Unit, r.Count)).ToArray();
        return Enumerable.Range(0, Math.Min(item.Count, most))
            .Select(i => new AllocationPart(i == 0 ? item.Id : FormattableString.Invariant($"{item.Id}#{i + 1}"), i < kept.Length ? kept[i] : null, item.Set));
    }
}
