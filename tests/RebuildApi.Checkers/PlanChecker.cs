using System.Numerics;
using RebuildApi.Contracts;

namespace RebuildApi.Checkers;

/// <summary>
/// Looks through a planned unit again, from the family's declaration and the snapshot alone: places filled, single-use parts new, sets whole, engagement teeth
/// with a sleeve of their form, every clearance whose parts were all read inside its window. Knows nothing of the planner or of the engine that judges.
/// </summary>
public static class PlanChecker
{
    /// <summary>What is wrong with the planned unit; empty when nothing is.</summary>
    /// <param name="family">The family.</param>
    /// <param name="planned">The unit with every part of the plan chosen.</param>
    public static IReadOnlyList<string> Faults(Family family, UnitSnapshot planned) =>
        [.. Places(family, planned), .. Sets(family, planned), .. Teeth(family, planned), .. Gaps(family, planned)];

    /// <summary>How many clearances could be worked out, so that a test can see that something was checked.</summary>
    public static int GapsChecked(Family family, UnitSnapshot planned) => family.Loops.Count(l => GapOf(l, family, planned) is not null);

    private static IEnumerable<string> Places(Family family, UnitSnapshot planned)
    {
        foreach (var position in family.Positions)
        {
            var there = Enumerable.Range(1, position.Quantity).Select(i => At(planned, position.Id, i)).OfType<Component>().ToArray();
            if (there.Length < (position.Fewest ?? position.Quantity))
                yield return $"{position.Id}: {there.Length} of {position.Quantity} are filled";
            if (family.Kinds.Single(k => k.Id == position.Kind).SingleUse && there.Any(c => c.Origin != Origin.New))
                yield return $"{position.Id}: a single-use part goes back";
        }
    }

    private static IEnumerable<string> Sets(Family family, UnitSnapshot planned) => family.Sets
        .Where(s => s.Positions.Select(p => WasFoundAt(planned, p)).Distinct().Count() > 1)
        .Select(s => $"{s.Id}: split");

    private static IEnumerable<string> Teeth(Family family, UnitSnapshot planned)
    {
        foreach (var rule in family.Pairings.Where(r => r.Template == "engagement-form"))
        {
            var gear = See(planned, rule.Roles["gear"].Split('/')[0], "dog.form");
            var sleeve = See(planned, rule.Roles["sleeve"].Split('/')[0], "form");
            if (gear is not null && sleeve is not null && gear != sleeve)
                yield return $"{rule.Id}: {gear} teeth in a {sleeve} sleeve";
        }
    }

    private static IEnumerable<string> Gaps(Family family, UnitSnapshot planned)
    {
        foreach (var loop in family.Loops)
        {
            if (GapOf(loop, family, planned) is not { } gap)
                continue;
            if ((loop.Window.Low is Exact low && gap.CompareTo(Fraction.Of(low.Value.Nanometres)) < 0) || (loop.Window.High is Exact high && gap.CompareTo(Fraction.Of(high.Value.Nanometres)) > 0))
                yield return $"{loop.Id}: {(double)gap.Top / (double)gap.Bottom / 1e6} mm is outside its window";
        }
    }

    private static Fraction? GapOf(ClearanceLoop loop, Family family, UnitSnapshot planned)
    {
        var sum = Fraction.Of(0);
        foreach (var term in loop.Terms)
        {
            if (ValueOf(term.Of, family, planned) is not { } value)
                return null;
            sum += new Fraction(value.Top * term.Numerator, value.Bottom * term.Denominator);
        }

        return sum;
    }

    private static Fraction? ValueOf(Dim of, Family family, UnitSnapshot planned) => of switch
    {
        Fixed length => Fraction.Of(length.Value.Nanometres),
        OfPart part => At(planned, part.At.Position, 1) is { } component ? Read(component, part.At.Characteristic, family, planned) : null,
        OfSeries series => Thickness(series, family, planned),
        _ => null,
    };

    private static Fraction? Thickness(OfSeries of, Family family, UnitSnapshot planned)
    {
        var sum = Fraction.Of(0);
        foreach (var piece in Enumerable.Range(1, of.MaxPieces).Select(i => At(planned, of.Position, i)).OfType<Component>())
        {
            var member = family.Series.Single(s => s.Id == of.Series).Members.FirstOrDefault(m => m.Id == piece.Attributes.GetValueOrDefault("member"));
            if ((Read(piece, "thickness", family, planned) ?? (member is null ? null : Fraction.Of(member.Thickness.Nanometres))) is not { } thickness)
                return null;
            sum += thickness;
        }

        return sum;
    }

    private static Fraction? Read(Component component, string characteristic, Family family, UnitSnapshot planned)
    {
        var readings = planned.Measurements.Where(m => m.Component == component.Id && m.Revision == component.Revision && m.Characteristic == characteristic)
            .SelectMany(m => m.Readings).ToArray();
        if (readings.Length == 0 || readings.Any(r => r.Low is null || r.Low != r.High))
            return null;
        var values = readings.Select(r => r.Low!.Value.Nanometres).ToArray();
        return family.Kinds.Single(k => k.Id == component.Kind).Characteristics.FirstOrDefault(c => c.Id == characteristic)?.Report switch
        {
            Statistic.Mean => new Fraction(values.Aggregate(BigInteger.Zero, (a, b) => a + b), values.Length),
            Statistic.Min => Fraction.Of(values.Min()),
            Statistic.Max => Fraction.Of(values.Max()),
            _ => null,
        };
    }

    private static Component? At(UnitSnapshot planned, string position, int index) =>
        planned.Placements.Where(p => p.Position == position && p.Index == index).MaxBy(p => p.Role) is { } placement
            ? planned.Components.FirstOrDefault(c => c.Id == placement.Component)
            : null;

    private static bool WasFoundAt(UnitSnapshot planned, string position) => At(planned, position, 1) is { } part
        && planned.Placements.Any(p => p.Role == PlacementRole.Found && p.Position == position && p.Component == part.Id);

    private static string? See(UnitSnapshot planned, string position, string attribute) => At(planned, position, 1) is { } part
        ? planned.Findings.Where(f => f.Component == part.Id && f.Revision == part.Revision).Select(f => f.Observation).OfType<AttributeSeen>().LastOrDefault(a => a.Attribute == attribute)?.Value
            ?? part.Attributes.GetValueOrDefault(attribute)
        : null;
}
