using RebuildApi.Checkers.Pairings;
using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Plans;

/// <summary>
/// Looks through a planned unit again, from the family's declaration and the snapshot alone: places filled, single-use parts new, sets whole; every verdict on a
/// part, every clearance and every pairing worked out anew and held against what the plan claims. Knows nothing of the planner or of the engine that judges.
/// </summary>
public static class PlanChecker
{
    /// <summary>What is wrong with a plan.</summary>
    /// <param name="family">The family.</param>
    /// <param name="planned">The unit with every part of the plan chosen.</param>
    /// <param name="claims">What the plan says of itself.</param>
    public static PlanCheck Check(Family family, UnitSnapshot planned, PlanClaims claims)
    {
        var check = Compare(family, planned, claims);
        var unit = new CheckedUnit(family, planned);
        return check with { Faults = [.. Places(unit), .. Sets(unit), .. Broken(claims), .. check.Faults] };
    }

    /// <summary>Whether a unit may be built: places filled, sets whole, no part nonconforming, no pairing incompatible, no clearance outside its window.</summary>
    public static bool Passes(Family family, UnitSnapshot planned)
    {
        var values = new CheckedValues(new CheckedUnit(family, planned));
        return !Places(values.Unit).Any() && !Sets(values.Unit).Any()
            && family.Positions.All(p => values.Unit.PlacesOf(p).All(i => !PartChecks.Of(p.Id, i, values).Contains(Outcome.Nonconforming)))
            && family.Pairings.All(r => PairingChecks.Of(r, values)?.Contains(Compatibility.Incompatible) != true)
            && family.Loops.All(l => !Deciding.Of(GapChecks.Of(l, values), l.Window, planned.Policy.For(l.Criticality)).Contains(Outcome.Nonconforming));
    }

    /// <summary>Where what is claimed of a unit, planned or not, is not what is found.</summary>
    public static PlanCheck Compare(Family family, UnitSnapshot planned, PlanClaims claims)
    {
        var values = new CheckedValues(new CheckedUnit(family, planned));
        var judged = family.Pairings.Select(r => (Rule: r, Allowed: PairingChecks.Of(r, values))).Where(p => p.Allowed is not null).ToArray();
        return new PlanCheck(
            [
                .. claims.Parts.Select(p => Part(p.Key, p.Value, values)).OfType<string>(),
                .. family.Loops.Select(l => Gap(l, claims, values)).OfType<string>(),
                .. judged.Select(p => Pairing(p.Rule, p.Allowed!, claims)).OfType<string>(),
            ],
            claims.Parts.Count,
            family.Loops.Count(l => GapChecks.Of(l, values)?.Point is not null),
            judged.Length);
    }

    private static IEnumerable<string> Broken(PlanClaims claims) =>
    [
        .. claims.Parts.Where(p => p.Value == Outcome.Nonconforming).Select(p => $"{p.Key}: a part that does not conform goes in"),
        .. claims.Clearances.Where(c => c.Value.Outcome == Outcome.Nonconforming).Select(c => $"{c.Key}: it is planned outside its window"),
        .. claims.Pairings.Where(p => p.Value == Compatibility.Incompatible).Select(p => $"{p.Key}: parts that may not run together are planned"),
    ];

    private static IEnumerable<string> Places(CheckedUnit unit)
    {
        foreach (var position in unit.Family.Positions)
        {
            var there = Enumerable.Range(1, position.Quantity).Select(i => unit.At(position.Id, i)).OfType<Component>().ToArray();
            if (there.Length < (position.Fewest ?? position.Quantity))
                yield return $"{position.Id}: {there.Length} of {position.Quantity} are filled";
            if (there.Any(c => c.Kind != position.Kind))
                yield return $"{position.Id}: a part of another kind";
            if (unit.KindOf(position.Id).SingleUse && there.Any(c => c.Origin != Origin.New))
                yield return $"{position.Id}: a single-use part goes back";
        }

        foreach (var twice in unit.Family.Positions.SelectMany(p => unit.PlacesOf(p).Select(i => unit.At(p.Id, i))).OfType<Component>().GroupBy(c => c.Id, StringComparer.Ordinal).Where(g => g.Count() > 1))
            yield return $"{twice.Key}: in two places at once";
    }

    private static IEnumerable<string> Sets(CheckedUnit unit) => unit.Family.Sets
        .Where(s => s.Positions.SelectMany(p => unit.PlacesOf(unit.PositionOf(p)).Select(i => unit.At(p, i) is { } c && unit.WasFoundAt(c, p, i))).Distinct().Count() > 1)
        .Select(s => $"{s.Id}: split");

    private static string? Part((string Position, int Index) at, Outcome claimed, CheckedValues values)
    {
        // A place of 0 speaks for all pieces of a pack together.
        var allowed = (at.Index == 0 ? values.Unit.PlacesOf(values.Unit.PositionOf(at.Position)) : [at.Index]).Select(i => PartChecks.Of(at.Position, i, values))
            .Aggregate((a, b) => a.SelectMany(x => b.Select(y => PartChecks.Worst(x, y))).ToHashSet());
        return allowed.Contains(claimed) ? null
            : $"{at.Position}#{at.Index}: {claimed} is claimed, {string.Join(" or ", allowed)} found ({string.Join(", ", PartChecks.Open(at.Position, Math.Max(1, at.Index), values))})";
    }

    private static string? Gap(ClearanceLoop loop, PlanClaims claims, CheckedValues values) =>
        claims.Clearances.TryGetValue(loop.Id, out var claim) ? GapChecks.Fault(loop, claim.Outcome, claim.Gap, values) : $"{loop.Id}: nothing is said of it";

    private static string? Pairing(PairingRule rule, IReadOnlySet<Compatibility> allowed, PlanClaims claims)
    {
        var claimed = claims.Pairings.TryGetValue(rule.Id, out var said) ? said : Compatibility.Compatible;
        return allowed.Contains(claimed) ? null : $"{rule.Id}: {claimed} is claimed, {string.Join(" or ", allowed)} found";
    }
}
