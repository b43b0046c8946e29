using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Plans;

/// <summary>Each clearance summed again from its members, with what trial assemblies of the same parts say.</summary>
internal static class GapChecks
{
    // What is derived is rounded to whole nanometres at each step.
    private const double RoundedApart = 3;

    /// <summary>What is wrong with what is claimed of a clearance; nothing when nothing is.</summary>
    public static string? Fault(ClearanceLoop loop, Outcome claimed, double? gap, CheckedValues values)
    {
        var window = values.Unit.Snapshot.Policy.Limits.LastOrDefault(l => l.Subject == loop.Id)?.Limits ?? loop.Window;
        var policy = values.Unit.Snapshot.Policy.For(loop.Criticality);
        if (HasTrial(loop, values.Unit))
            return Contradiction(claimed, gap, window) is { } odd ? $"{loop.Id}: {odd}" : null;
        var sum = Of(loop, values);
        var allowed = Deciding.Of(sum, window, policy);
        if (sum?.Point is { } point && gap is { } said && Math.Abs(said - point) > RoundedApart)
            return $"{loop.Id}: the gap is {point:0} nm, not {said:0}";
        if (sum?.Point is null && gap is not null)
            return $"{loop.Id}: a gap is claimed though a member is not known";
        return allowed.Contains(claimed) ? null : $"{loop.Id}: {claimed} is claimed, {string.Join(" or ", allowed)} found at {sum?.Point:0} ± {sum?.U:0} nm";
    }

    /// <summary>Σ coefficient × member, in nanometres; none when a member is not known.</summary>
    public static CheckedValue? Of(ClearanceLoop loop, CheckedValues values)
    {
        var terms = loop.Terms.Select(t => (Factor: (double)t.Numerator / t.Denominator, Value: t.Of switch
        {
            Fixed length => CheckedValue.Exactly(length.Value.Nanometres),
            OfPart part => values.At(part.At.Position, 1, part.At.Characteristic),
            OfSeries series => Thickness(series, values),
            _ => null,
        })).ToArray();
        return terms.Any(t => t.Value is null) ? null : CheckedValue.Sum([.. terms.Select(t => (t.Factor, t.Value!))], EstimateBasis.Measured);
    }

    /// <summary>All pieces at a position together: read, or as their member is made, ± its tolerance. A single-use piece that was merely found does not count.</summary>
    private static CheckedValue? Thickness(OfSeries of, CheckedValues values)
    {
        var unit = values.Unit;
        var series = unit.Family.Series.Single(s => s.Id == of.Series);
        var isSingleUse = unit.KindOf(of.Position).SingleUse;
        var pieces = Enumerable.Range(1, unit.PositionOf(of.Position).Quantity)
            .Where(i => unit.At(of.Position, i) is not null && !(isSingleUse && unit.PlacedAt(of.Position, i)!.Role == PlacementRole.Found))
            .Select(i => Piece(unit.At(of.Position, i)!, of.Position, i, series, values)).ToArray();
        return pieces.Length == 0 || pieces.Any(p => p is null) ? null : CheckedValue.Sum([.. pieces.Select(p => (1.0, p!))], EstimateBasis.Measured);
    }

    private static CheckedValue? Piece(Component piece, string position, int index, Series series, CheckedValues values)
    {
        if (values.Unit.Snapshot.Measurements.Any(m => m.Component == piece.Id && m.Revision == piece.Revision && m.Characteristic == "thickness"))
            return values.At(position, index, "thickness");
        return series.Members.FirstOrDefault(m => m.Id == piece.Attributes.GetValueOrDefault("member") || m.Id == piece.Label) is { } member
            ? new CheckedValue(member.Thickness.Nanometres, series.Tolerance.Nanometres / Math.Sqrt(3), double.PositiveInfinity, EstimateBasis.Drawing)
            : null;
    }

    /// <summary>A trial assembly of the very parts that count may speak too; then only window and outcome are held against each other.</summary>
    private static bool HasTrial(ClearanceLoop loop, CheckedUnit unit) => unit.Snapshot.Trials.Any(t => t.Loop == loop.Id && t.Fitted.All(f =>
        Enumerable.Range(1, unit.PositionOf(f.Position).Quantity).Any(i => unit.At(f.Position, i) is { } c && c.Id == f.Component && c.Revision == f.Revision)));

    private static string? Contradiction(Outcome claimed, double? gap, Limits window)
    {
        var outside = gap < CheckedValue.Number(window.Low) || gap > CheckedValue.Number(window.High);
        return (claimed, gap, outside) switch
        {
            (Outcome.Conforming, not null, true) => "conforming is claimed outside the window",
            (Outcome.Nonconforming, not null, false) => "nonconforming is claimed inside the window",
            _ => null,
        };
    }
}
