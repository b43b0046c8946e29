using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Planning;

/// <summary>What the family's operations can make of a part that was found: its faults mended, or a face cut so that a clearance comes right.</summary>
internal static class Reworks
{
    /// <summary>More depths than this are thinned out evenly.</summary>
    private const int MostDepths = 40;

    public static IEnumerable<Fit> Of(PlacedComponent here, Fit found, EstimateBook book, bool cuts)
    {
        var answer = PartJudge.Judge(here, book);
        var mending = answer.Operations;
        var works = mending.Length > 1 ? mending.Select(o => ImmutableArray.Create(o)).Append(mending) : mending.Select(o => ImmutableArray.Create(o));
        return works.SelectMany(w => Mended(here, found, w, book)).Concat(cuts ? Cuts(here, found, book) : []);
    }

    /// <summary>The part with its damage gone and every failing dimension worked to where it conforms, if the operation reaches that far.</summary>
    private static IEnumerable<Fit> Mended(PlacedComponent here, Fit found, ImmutableArray<Operation> operations, EstimateBook book)
    {
        var depths = operations.Select(o => o.Effects.IsEmpty ? 0 : FewestSteps(here, o, book)).ToImmutableArray();
        if (depths.Any(d => d is null))
            return [];
        return [Worked(here, found, [.. operations.Zip(depths, (o, d) => (o, d!.Value))], book)];
    }

    /// <summary>Steps after which the dimension that the operation is about conforms, the fewest; none when it can't be.</summary>
    private static int? FewestSteps(PlacedComponent here, Operation operation, EstimateBook book)
    {
        var cut = new Cut(operation, here.Placement.Position);
        var limit = CutLimit.Of(cut, book);
        if (limit.MostSteps is not { } most || most < Math.Max(1, limit.FewestSteps))
            return null;
        var characteristic = book.View.Family.CharacteristicOf(here.Component.Kind, cut.Main.At.Characteristic);
        if (characteristic is null || Conformity.CharacteristicJudge.LimitsAt(new Address(cut.Position, characteristic.Id), book.View) is not { } limits)
            return Math.Max(1, limit.FewestSteps);
        if (book.Of(here, characteristic).Value is not Exact { Value: var now })
            return null;
        for (var steps = Math.Max(1, limit.FewestSteps); steps <= most; steps++)
        {
            if (limits.Contains(now + (steps * Cut.PerStep(cut.Main))))
                return steps;
        }

        return null;
    }

    private static IEnumerable<Fit> Cuts(PlacedComponent here, Fit found, EstimateBook book)
    {
        var family = book.View.Family;
        foreach (var cut in Cut.Of(family).Where(c => c.Position == here.Placement.Position && family.Family.Loops.Any(l => c.Touches(l, family))))
        {
            var limit = CutLimit.Of(cut, book);
            var (fewest, most) = (Math.Max(1, limit.FewestSteps), limit.MostSteps ?? 0);
            var stride = Math.Max(1, (most - fewest + MostDepths) / MostDepths);
            for (var steps = fewest; steps <= most; steps += stride)
                yield return Worked(here, found, [(cut.Operation, steps)], book) with { JudgedAs = found };
        }
    }

    private static Fit Worked(PlacedComponent here, Fit found, ImmutableArray<(Operation Operation, int Steps)> work, EstimateBook book)
    {
        var name = string.Concat(work.Select(w => w.Operation.Effects.IsEmpty ? $"+{w.Operation.Id}" : $"+{w.Operation.Id}*{w.Steps}"));
        var changes = work.SelectMany(w => w.Operation.Effects.Select(e => (e.At.Characteristic, Change: w.Steps * Cut.PerStep(e))))
            .GroupBy(c => c.Characteristic, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Aggregate(Length.Zero, (sum, c) => sum + c.Change), StringComparer.Ordinal);
        var after = here.Component with { Revision = here.Component.Revision + 1 };
        var known = found.Parts[0];
        var mends = work.SelectMany(w => w.Operation.Mends).ToHashSet(StringComparer.Ordinal);
        var part = new Candidate(
            after,
            [.. known.Measurements.Select(m => Moved(m, name, after.Revision, changes.GetValueOrDefault(m.Characteristic)))],
            [.. Findings(known, name, after, mends)],
            known.Instruments);
        return found with { Id = found.Id + name, Source = PartSource.Rework, Parts = [part], Work = [.. work.Select(w => WorkOf(w.Operation, w.Steps, here.Placement))] };
    }

    private static PlanWork WorkOf(Operation operation, int steps, Placement at) => new(
        operation.Id, at.Position, at.Index, operation.Minutes,
        operation.Effects.IsEmpty ? null : steps * Cut.PerStep(operation.Effects[0]),
        operation.Effects.IsEmpty ? null : operation.Effects[0].Datum,
        operation.RemeasureGate, operation.Cautions);

    private static Measurement Moved(Measurement m, string name, int revision, Length change) => m with
    {
        Id = m.Id + name,
        Revision = revision,
        Readings = change == Length.Zero ? m.Readings : [.. m.Readings.Select(r => r with { Low = r.Low + change, High = r.High + change })],
    };

    /// <summary>What was seen, without the damage that the work removes. That it then is sound is a promise, and stands under the condition to look again.</summary>
    private static IEnumerable<Finding> Findings(Candidate known, string name, Component after, HashSet<string> mends)
    {
        var kept = known.Findings.Where(f => f.Observation is not DamageSeen d || !mends.Contains(d.Class))
            .Select(f => f with { Id = f.Id + name, Revision = after.Revision }).ToArray();
        var isClear = !kept.Any(f => f.Observation is DamageSeen or Sound) && known.Findings.Length > 0;
        return isClear ? [.. kept, known.Findings[0] with { Id = "sound" + known.Findings[0].Id + name, Revision = after.Revision, Observation = new Sound() }] : kept;
    }
}
