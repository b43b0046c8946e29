using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>
/// The work of plans: for a sound unit, for one with the damage that an operation mends, and for one in which a cut is needed and nothing else can stand in
/// for it.
/// </summary>
internal sealed class WorkProbe(Bench sound, CutProbe cuts)
{
    public string Ask(Family changed, string operation)
    {
        var declared = sound.Family.Operations.Single(o => o.Id == operation);
        var kept = declared.Effects.IsEmpty || !declared.Mends.IsEmpty ? [] : Joined(declared);
        return string.Join('\n', Units(declared).Select(bench => Work(bench, With(changed, declared), kept)));
    }

    private IEnumerable<Bench> Units(Operation operation) => (operation.Mends.IsEmpty, operation.Effects.IsEmpty) switch
    {
        (true, true) => [sound],
        (true, false) => cuts.Needing(operation.Id),
        (false, true) => [Damaged(operation)],
        (false, false) => Worn(operation, Damaged(operation)),
    };

    /// <summary>The family with one cut only, so that nothing cheaper stands in for it.</summary>
    private static Family With(Family family, Operation operation) =>
        operation.Effects.IsEmpty ? family : family with { Operations = [.. family.Operations.Where(o => o.Id == operation.Id || o.Effects.IsEmpty)] };

    /// <summary>The positions that meet the part to be cut in some clearance: what was found there goes back, so that no new part spares the cut.</summary>
    private ImmutableHashSet<string> Joined(Operation operation) =>
    [
        .. from loop in sound.Family.Loops
           let parts = loop.Terms.Select(t => t.Of).OfType<OfPart>().Select(p => p.At.Position).ToArray()
           where parts.Contains(PlaceOf(operation))
           from position in parts
           select position,
    ];

    private static string Work(Bench bench, Family family, ImmutableHashSet<string> kept)
    {
        var request = new PlanRequest { Limits = new PlanLimits { KeepOriginal = kept } };
        var answer = UnitPlanner.Plan(new EstimateBook(new UnitView(bench.Snapshot, new FamilyIndex(family))), request, new NoHooks());
        return Said.Of((answer.Status, answer.Plan?.Work, answer.Plan?.Cost.Labour));
    }

    /// <summary>Damaged as the family's policy has it that is reworked.</summary>
    private Bench Damaged(Operation operation)
    {
        var policy = sound.Family.Damage.First(d => d.Disposition == Disposition.Rework && (d.Kind == operation.Kind || d.Kind == "*") && operation.Mends.Contains(d.DamageClass));
        return sound.Damaged(
            PlaceOf(operation), policy.DamageClass, policy.Extent == "*" ? "slight" : policy.Extent, policy.Where == "*" ? null : policy.Where);
    }

    /// <summary>Past its limit by one step and by as much as may just be worked off; and with hardly anything left that may come off.</summary>
    private IEnumerable<Bench> Worn(Operation operation, Bench damaged)
    {
        var effect = operation.Effects[0];
        var at = $"{PlaceOf(operation)}/{effect.At.Characteristic}";
        var high = ((Exact)new FamilyIndex(sound.Family).ServiceLimitsAt(Address.TryParse(at)!)!.High!).Value;
        var least = Length.Micrometres(1);
        yield return Reads(high + least);
        yield return Reads(high - effect.MinChange - least);
        if (effect.Remaining is { Low: Exact low })
            yield return Reads(low.Value + effect.Step - least);
        if (effect.Remaining is { High: Exact most })
        {
            yield return Reads(most.Value + (2 * effect.Step) - least);
            yield return Reads(most.Value + effect.MaxChange - least);
            yield return Reads(most.Value + effect.MaxChange + least);
        }

        Bench Reads(Length value) => damaged.Reads(at, 1, [.. Enumerable.Repeat(Gauges.Reading(new Exact(value)), 9)]);
    }

    private string PlaceOf(Operation operation) => sound.Family.Positions.First(p => p.Kind == operation.Kind).Id;
}
