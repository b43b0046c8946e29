using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Reasons;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Damage;

/// <summary>
/// Is the part good to look at? Findings against the family's damage policy. A part that nobody looked at is not assessed; spinning sweetly
/// is no finding. The worst damage decides, and damage stands against "sound".
/// </summary>
public static class DamageJudge
{
    /// <summary>Judges the condition of one part.</summary>
    /// <param name="placed">The part where it sits.</param>
    /// <param name="view">The unit.</param>
    public static ConditionAnswer Judge(PlacedComponent placed, UnitView view)
    {
        var subject = Subjects.Of(placed.Placement);
        var seen = view.FindingsOf(placed.Component).Select(f => f.Observation).ToImmutableArray();
        var damage = seen.OfType<DamageSeen>().Select(d => Weigh(d, placed.Component, subject, view)).ToImmutableArray();
        if (damage.Length > 0)
            return Worst(damage);
        if (IsUsedSingleUse(placed.Component, view))
            return new ConditionAnswer(Outcome.Nonconforming, Disposition.Replace, [Because.Of("single-use", subject)], []);
        if (seen.OfType<Sound>().Any())
            return new ConditionAnswer(Outcome.Conforming, Disposition.Reuse, [Because.Of("inspected-sound", subject)], []);
        return placed.Component.Origin == Origin.New
            ? new ConditionAnswer(Outcome.Conforming, Disposition.Reuse, [Because.Of("new-part", subject)], [])
            : new ConditionAnswer(Outcome.NotAssessed, Disposition.Undecided, [Because.Of("not-inspected", subject)], []);
    }

    private static bool IsUsedSingleUse(Component component, UnitView view) =>
        component.Origin != Origin.New && view.Family.Kinds.TryGetValue(component.Kind, out var kind) && kind.SingleUse;

    private static ConditionAnswer Worst(ImmutableArray<ConditionAnswer> answers)
    {
        var worst = answers.MaxBy(a => (Outcomes.Rank(a.Outcome), a.Disposition))!;
        return worst with
        {
            Reasons = [.. answers.SelectMany(a => a.Reasons)],
            Advice = [.. answers.SelectMany(a => a.Advice)],
            Mends = [.. answers.SelectMany(a => a.Mends).Distinct()],
        };
    }

    private static ConditionAnswer Weigh(DamageSeen damage, Component component, string subject, UnitView view)
    {
        var arguments = ("damage", damage.Class);
        var policy = DamagePolicies.For(view.Family.Family, component.Kind, damage, view.Snapshot.Policy.Duty);
        if (policy is null)
        {
            return new ConditionAnswer(
                Outcome.NotAssessed, Disposition.Undecided, [Because.Of("damage-without-policy", subject, arguments, ("extent", damage.Extent))], []);
        }

        var mending = view.Family.Family.Operations.Where(o => o.Kind == component.Kind && o.Mends.Contains(damage.Class)).Select(o => o.Id);
        var reason = Because.Of(
            "damage-" + Word(policy.Disposition), subject, arguments, ("extent", damage.Extent), ("place", damage.Place ?? "part"), ("source", policy.Source.Citation));
        return new ConditionAnswer(policy.Outcome, policy.Disposition, [reason], policy.Advice is { } advice ? [advice] : [])
        {
            Mends = policy.Disposition == Disposition.Rework ? [.. mending] : [],
        };
    }

    private static string Word(Disposition disposition) => disposition.ToString().ToLowerInvariant();
}
