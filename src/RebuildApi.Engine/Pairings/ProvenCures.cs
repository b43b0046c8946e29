using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Pairings;

/// <summary>
/// Cures that were tried: each exchange is made on a copy of the snapshot and judged again. Only what then comes out compatible is called
/// sufficient, whatever the family says of it.
/// </summary>
public static class ProvenCures
{
    /// <summary>
    /// For a rule that was judged and found wrong, cheapest first: the family's cures and the engine's own exchanges that are sufficient, ask for
    /// no more than they must and spoil no other pairing. A cure of the family that names less than the rule looks at is filled up from the
    /// engine's exchange of the same parts.
    /// </summary>
    internal static ImmutableArray<Cure> For(PairingRule rule, EstimateBook book, PriceOfPart? priceOf = null)
    {
        var exchanges = PairingJudge.Cases(rule, book).Take(1)
            .SelectMany(Templates.Of(rule.Template)!.Exchanges)
            .SelectMany(e => WithSets(e, book.View.Family))
            .Select(e => new Cure(e.Id, Text.English(e.Id, e.Words), Sufficient: true, e.Steps))
            .ToArray();
        var proven = new Dictionary<Cure, bool>(ReferenceEqualityComparer.Instance);
        bool IsProven(Cure c) => proven.TryGetValue(c, out var known) ? known : proven[c] = Mends(rule, c, book, sparesOthers: true);

        var cures = rule.Cures.Select(c => Proven(c, rule, book, exchanges, IsProven)).ToList();
        foreach (var exchange in exchanges)
        {
            if (!cures.Any(c => c.Sufficient && IsContained(c, exchange)) && IsProven(exchange))
                cures.Add(exchange);
        }

        return CureCosts.CheapestFirst([.. cures], book.View.Family, priceOf);
    }

    private static Cure Proven(Cure cure, PairingRule rule, EstimateBook book, Cure[] exchanges, Func<Cure, bool> isProven)
    {
        if (!cure.Sufficient || cure.Steps.IsDefaultOrEmpty)
            return cure with { Sufficient = false };
        if (Mends(rule, cure, book, sparesOthers: false))
            return cure;
        var whole = Array.Find(exchanges, e => cure.Steps.All(s => e.Steps.Any(t => AsksAtLeast(t, s))) && isProven(e));
        return whole is null ? cure with { Sufficient = false } : cure with { Steps = whole.Steps };
    }

    private static bool AsksAtLeast(CureStep step, CureStep asked) =>
        (step.Position, step.Attribute, step.Value, step.Characteristic) == (asked.Position, asked.Attribute, asked.Value, asked.Characteristic);

    /// <summary>
    /// The snapshot after a cure: at every position that the cure names, new parts that have what its steps ask for and of which nothing else
    /// is known. They face as the parts they replace. A characteristic comes out at its target, else in the middle of its limits.
    /// </summary>
    public static UnitSnapshot Apply(Cure cure, UnitSnapshot snapshot, FamilyIndex family)
    {
        var after = snapshot;
        foreach (var steps in cure.Steps.GroupBy(s => s.Position, StringComparer.Ordinal))
        {
            if (family.Positions.TryGetValue(steps.Key, out var position))
                after = Fit(after, position, [.. steps], family);
        }

        return after;
    }

    /// <summary>The exchange, and the same with the rest of every set that it would split, supplied as a set.</summary>
    private static IEnumerable<Exchange> WithSets(Exchange exchange, FamilyIndex family)
    {
        yield return exchange;
        var positions = exchange.Steps.Select(s => s.Position).ToHashSet(StringComparer.Ordinal);
        var sets = family.Family.Sets.Where(s => s.Positions.Any(positions.Contains)).ToArray();
        var others = sets.SelectMany(s => s.Positions).Where(p => !positions.Contains(p)).Distinct(StringComparer.Ordinal).ToArray();
        if (others.Length == 0)
            yield break;
        yield return new Exchange(
            exchange.Id + "-as-set",
            $"{exchange.Words} Change with it, as a set: {PositionNames.And(others.Select(o => "the " + family.Called(o)))}.",
            [.. exchange.Steps, .. sets.SelectMany(s => s.Positions).Distinct(StringComparer.Ordinal).Select(p => new CureStep(p, "supplied", "as-set", null, null))]);
    }

    /// <summary>Whether the rule comes out compatible with the cure made, and, when asked, no other rule is broken by it.</summary>
    private static bool Mends(PairingRule rule, Cure cure, EstimateBook book, bool sparesOthers)
    {
        if (cure.Steps.IsDefaultOrEmpty)
            return false;
        var after = After(cure, book);
        return PairingJudge.Outcome(rule, after) == Compatibility.Compatible && (!sparesOthers || HurtsNoOther(rule, cure, book, after));
    }

    /// <summary>
    /// Whether no other rule of the exchanged positions, good or open before, is broken by the exchange: a sleeve that suits third must not spoil
    /// fourth.
    /// </summary>
    private static bool HurtsNoOther(PairingRule rule, Cure cure, EstimateBook book, EstimateBook after)
    {
        return cure.Steps.Select(s => s.Position).Distinct(StringComparer.Ordinal)
            .SelectMany(book.View.Family.PairingsAt)
            .Distinct(ReferenceEqualityComparer.Instance).Cast<PairingRule>()
            .Where(r => r.Id != rule.Id)
            .Where(r => PairingJudge.Outcome(r, after) == Compatibility.Incompatible)
            .All(r => PairingJudge.Outcome(r, book) == Compatibility.Incompatible);
    }

    /// <summary>What is known of the unit after a cure; only outcomes are asked of it, so no hash is made.</summary>
    internal static EstimateBook After(Cure cure, EstimateBook book) => book.WithExchanged(
        Apply(cure, book.View.Snapshot, book.View.Family),
        cure.Steps.Select(s => s.Position).ToHashSet(StringComparer.Ordinal));

    private static bool IsContained(Cure smaller, Cure larger) => smaller.Steps
        .Select(s => s.Position)
        .All(p => larger.Steps.Any(s => s.Position == p));

    private static UnitSnapshot Fit(UnitSnapshot snapshot, Position position, ImmutableArray<CureStep> steps, FamilyIndex family)
    {
        var attributes = steps.Where(s => s.Attribute is not null && s.Value is not null).DistinctBy(s => s.Attribute)
            .ToImmutableSortedDictionary(s => s.Attribute!, s => s.Value!, StringComparer.Ordinal);
        var facings = snapshot.Placements.Where(p => p.Position == position.Id).ToLookup(p => p.Index);
        var ids = Enumerable.Range(1, position.Quantity).Select(i => (Index: i, Id: $"cure.{position.Id}.{i}")).ToArray();
        bool IsOfThisCure(string component) => ids.Any(x => x.Id == component);
        return snapshot with
        {
            Components = snapshot.Components.RemoveAll(c => IsOfThisCure(c.Id)).AddRange(ids.Select(x => new Component(x.Id, 1, position.Kind, Origin.New, attributes, null))),
            Placements =
            [
                .. snapshot.Placements.Where(p => p.Position != position.Id),
                .. ids.Select(x => new Placement(
                    position.Id, x.Index, x.Id, PlacementRole.Chosen, facings[x.Index].MaxBy(p => p.Role)?.Facing ?? Facing.Unspecified, null)),
            ],
            Measurements = snapshot.Measurements.RemoveAll(m => IsOfThisCure(m.Component)).AddRange(ids.SelectMany(x => steps
                .Where(s => s.Characteristic is not null && s.Within is not null)
                .Select(s => Measured(x.Id, s, family, position)))),
        };
    }

    private static Measurement Measured(string component, CureStep step, FamilyIndex family, Position position)
    {
        var reading = ReadingOf(Aim(step.Within!));
        var count = Math.Max(1, family.CharacteristicAt(new Address(position.Id, step.Characteristic!))?.MinimumReadings ?? 1);
        return new Measurement(
            component + "." + step.Characteristic,
            component,
            1,
            step.Characteristic!,
            [.. Enumerable.Repeat(reading, count)],
            new Taken(null, null, "cure", "cure", DateTimeOffset.UnixEpoch, null),
            null);
    }

    private static Quantity Aim(Limits within) => within switch
    {
        { Target: { } target } => target,
        { Low: Exact low, High: Exact high } => new Exact(new Length((low.Value + high.Value).Nanometres / 2)),
        { Low: Real low, High: Real high } => new Real((low.Si + high.Si) / 2, low.Dimension),
        { Low: { } low } => low,
        _ => within.High!,
    };

    private static Reading ReadingOf(Quantity value) => value is Exact exact
        ? Reading.Of(exact.Value, exact.Value.InMillimetres.ToString("F6", CultureInfo.InvariantCulture), "mm")
        : new Reading(null, null, value.InSi, value.InSi.ToString("F17", CultureInfo.InvariantCulture), "SI", null);
}
