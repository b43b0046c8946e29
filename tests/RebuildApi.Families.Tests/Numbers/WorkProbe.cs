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

    /// <summary>
    /// Past its limit by one step and by as much as may just be worked off; with hardly any room left before what must remain; and, where the work must bring
    /// it below an end, just within reach of that and just out of it.
    /// </summary>
    private IEnumerable<Bench> Worn(Operation operation, Bench damaged)
    {
        var effect = operation.Effects[0];
        var removes = effect.MinChange < Length.Zero;
        var at = $"{PlaceOf(operation)}/{effect.At.Characteristic}";
        var limits = new FamilyIndex(sound.Family).ServiceLimitsAt(Address.TryParse(at)!)!;
        var least = Length.Micrometres(1);
        var (failing, most) = removes ? (limits.High, -effect.MinChange) : (limits.Low, effect.MaxChange);
        if (failing is Exact end)
        {
            yield return Reads(end.Value + (removes ? least : -least));
            yield return Reads(end.Value + (removes ? most - least : least - most));
        }

        if (effect.Remaining is { Low: Exact low })
            yield return Reads(low.Value + effect.Step - least);
        if (effect.Remaining is { High: Exact high })
        {
            yield return Reads(high.Value - effect.Step + least);
            yield return Reads(high.Value + (2 * effect.Step) - least);
            yield return Reads(high.Value + effect.MaxChange - least);
            yield return Reads(high.Value + effect.MaxChange + least);
        }

        Bench Reads(Length value) => damaged.Reads(at, 1, [.. Enumerable.Repeat(Gauges.Reading(new Exact(value)), 9)]);
    }

    private string PlaceOf(Operation operation) => sound.Family.Positions.First(p => p.Kind == operation.Kind).Id;
}
