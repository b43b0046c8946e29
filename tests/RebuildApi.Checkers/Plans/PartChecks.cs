using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Plans;

/// <summary>Is each part good? What was seen against the damage policy, what was read against the limits; the worst decides.</summary>
internal static class PartChecks
{
    private static readonly Outcome[] s_worse = [Outcome.Conforming, Outcome.Inconclusive, Outcome.NotAssessed, Outcome.Nonconforming];

    /// <summary>The outcomes that a part may come to.</summary>
    public static IReadOnlySet<Outcome> Of(string position, int index, CheckedValues values)
    {
        if (values.Unit.At(position, index) is not { } part)
            return new HashSet<Outcome> { Outcome.NotAssessed };
        IEnumerable<IReadOnlySet<Outcome>> all =
        [
            new HashSet<Outcome> { Condition(part, values.Unit) },
            .. values.Unit.KindOf(position).Characteristics.Select(c => Read(part, position, index, c, values)).OfType<IReadOnlySet<Outcome>>(),
        ];
        return all.Aggregate((a, b) => a.SelectMany(x => b.Select(y => Worst(x, y))).ToHashSet());
    }

    /// <summary>What is not surely good, with what is known of it.</summary>
    public static IEnumerable<string> Open(string position, int index, CheckedValues values) => values.Unit.At(position, index) is not { } part ? [] :
        from c in values.Unit.KindOf(position).Characteristics
        let found = Read(part, position, index, c, values)
        where found is not null && !found.SetEquals([Outcome.Conforming])
        select $"{c.Id} {string.Join('/', found)} at {values.At(position, index, c.Id)?.Point} ± {values.At(position, index, c.Id)?.U}";

    public static Outcome Worst(Outcome a, Outcome b) => Array.IndexOf(s_worse, a) >= Array.IndexOf(s_worse, b) ? a : b;

    private static Outcome Condition(Component part, CheckedUnit unit)
    {
        var seen = unit.SeenOn(part).Select(f => f.Observation).ToArray();
        if (seen.OfType<DamageSeen>().ToArray() is { Length: > 0 } damage)
            return damage.Select(d => PolicyFor(d, part, unit)?.Outcome ?? Outcome.NotAssessed).Aggregate(Worst);
        if (part.Origin != Origin.New && unit.Family.Kinds.Single(k => k.Id == part.Kind).SingleUse)
            return Outcome.Nonconforming;
        return part.Origin == Origin.New || seen.OfType<Sound>().Any() ? Outcome.Conforming : Outcome.NotAssessed;
    }

    /// <summary>Kind counts before place, place before extent, extent before duty.</summary>
    private static DamagePolicy? PolicyFor(DamageSeen damage, Component part, CheckedUnit unit) => unit.Family.Damage
        .Where(p => p.DamageClass == damage.Class && Fits(p.Kind, part.Kind) && Fits(p.Where, damage.Place) && Fits(p.Extent, damage.Extent) && Fits(p.Duty, unit.Snapshot.Policy.Duty))
        .OrderByDescending(p => (p.Kind == "*" ? 0 : 8) + (p.Where == "*" ? 0 : 4) + (p.Extent == "*" ? 0 : 2) + (p.Duty == "*" ? 0 : 1)).FirstOrDefault();

    private static bool Fits(string pattern, string? value) => pattern == "*" || pattern == value;

    private static IReadOnlySet<Outcome>? Read(Component part, string position, int index, Characteristic c, CheckedValues values)
    {
        if (values.Unit.LimitsAt(position, c.Id) is not { } limits)
            return null;
        var policy = values.Unit.Snapshot.Policy.For(c.Criticality);
        var readings = values.ReadingsAt(part, c);
        var value = values.At(position, index, c.Id);
        if (readings.Count == 0)
            return value is { From: EstimateBasis.Derived } ? Deciding.Of(value, limits, policy) : new HashSet<Outcome> { Outcome.NotAssessed };
        if (readings.Count < c.MinimumReadings)
            return new HashSet<Outcome> { Outcome.NotAssessed };
        if (c.Report != Statistic.MinAndMax)
            return Deciding.Of(value, limits, policy);
        var (least, most) = (Deciding.Of(readings.Of(Statistic.Min), limits, policy), Deciding.Of(readings.Of(Statistic.Max), limits, policy));
        return least.SelectMany(a => most.Select(b => Worst(a, b))).ToHashSet();
    }
}
