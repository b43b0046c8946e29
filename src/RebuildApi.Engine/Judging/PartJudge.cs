using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Damage;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Judging;

/// <summary>Is each part good? What was seen and what was read together; the worst decides.</summary>
public static class PartJudge
{
    /// <summary>Every place of the family in stripping order, each with the part that counts there.</summary>
    public static ImmutableArray<PartAnswer> JudgeAll(EstimateBook book) =>
    [
        .. book.View.Family.Family.Positions
            .OrderBy(p => p.StripOrder)
            .SelectMany(position => Enumerable.Range(1, position.Quantity).Where(index => Counts(position, index, book.View)).Select(index => Judge(position, index, book))),
    ];

    /// <summary>A place that must be filled, or that is: a pack of shims may have fewer pieces than there is room for.</summary>
    private static bool Counts(Position position, int index, UnitView view) =>
        index <= (position.Fewest ?? position.Quantity) || view.At(position.Id).Any(p => p.Placement.Index == index);

    private static PartAnswer Judge(Position position, int index, EstimateBook book) =>
        book.View.At(position.Id).FirstOrDefault(p => p.Placement.Index == index) is { } placed
            ? Judge(placed, book)
            : Absent(position, index, book.View);

    /// <summary>Judges one part where it sits.</summary>
    public static PartAnswer Judge(PlacedComponent placed, EstimateBook book)
    {
        var view = book.View;
        var seen = DamageJudge.Judge(placed, view);
        var read = view.Family.Kinds[placed.Component.Kind].Characteristics
            .Select(c => (Characteristic: c.Id, Verdict: CharacteristicJudge.Judge(placed, c, book)))
            .Where(r => r.Verdict is not null)
            .ToImmutableArray();
        var verdicts = read.Select(r => r.Verdict!).ToImmutableArray();
        var condition = Condition(Subjects.Of(placed.Placement), seen.Outcome, seen.Reasons, view);
        var outcome = Outcomes.Worst(verdicts.Select(v => v.Outcome).Prepend(seen.Outcome));
        var failing = read.Where(r => r.Verdict!.Outcome == Outcome.Nonconforming).Select(r => r.Characteristic).ToHashSet();
        var operations = Mending(placed.Component.Kind, seen, failing, view.Family);
        return new PartAnswer(
            placed.Placement.Position,
            placed.Placement.Index,
            placed.Component,
            outcome,
            DispositionOf(outcome, seen, failing, operations),
            condition,
            verdicts,
            operations,
            seen.Advice);
    }

    private static PartAnswer Absent(Position position, int index, UnitView view)
    {
        var subject = Subjects.Of(position.Id, index);
        var condition = Condition(subject, Outcome.NotAssessed, [Because.Of("nothing-there", subject, ("position", position.Name.In("en")))], view);
        return new PartAnswer(position.Id, index, null, Outcome.NotAssessed, Disposition.Undecided, condition, [], [], []);
    }

    private static Verdict Condition(string subject, Outcome outcome, ImmutableArray<Reason> reasons, UnitView view)
    {
        ImmutableArray<Change> change = outcome == Outcome.NotAssessed ? [new Change("look-at-it", subject, null, Outcome.NotAssessed)] : [];
        return new Verdict(subject, outcome, null, null, null, null, reasons, change, view.Family.IdentityOf(subject), view.InputsSha256);
    }

    /// <summary>Operations that remove the damage seen, or change a characteristic that is nonconforming.</summary>
    private static ImmutableArray<Operation> Mending(string kind, ConditionAnswer seen, HashSet<string> failing, FamilyIndex family)
    {
        var changing = family.Family.Operations
            .Where(o => o.Kind == kind && o.Effects.Any(e => failing.Contains(e.At.Characteristic)));
        return [.. seen.Mends.Select(id => family.Operations[id]).Concat(changing).DistinctBy(o => o.Id)];
    }

    private static Disposition DispositionOf(
        Outcome outcome, ConditionAnswer seen, HashSet<string> failing, ImmutableArray<Operation> operations)
    {
        if (seen is { Outcome: Outcome.Nonconforming, Disposition: Disposition.Replace })
            return Disposition.Replace;
        return outcome switch
        {
            Outcome.Conforming => Disposition.Reuse,
            Outcome.Nonconforming => EveryFaultCanBeMended(seen, failing, operations) ? Disposition.Rework : Disposition.Replace,
            _ => Disposition.Undecided,
        };
    }

    private static bool EveryFaultCanBeMended(
        ConditionAnswer seen, HashSet<string> failing, ImmutableArray<Operation> operations)
    {
        var changed = operations.SelectMany(o => o.Effects).Select(e => e.At.Characteristic).ToHashSet();
        return (seen.Outcome != Outcome.Nonconforming || seen.Mends.Length > 0) && failing.All(changed.Contains);
    }
}
