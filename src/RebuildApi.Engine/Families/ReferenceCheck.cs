using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Families;

/// <summary>What kinds, positions, clearances, series and operations refer to is there.</summary>
internal static class ReferenceCheck
{
    public static void Run(Family family, FamilyReport report)
    {
        var names = new FamilyNames(family);
        foreach (var kind in family.Kinds)
            Kind(kind, names, report);
        foreach (var position in family.Positions)
            Position(position, names, report);
        foreach (var loop in family.Loops)
            Loop(loop, names, report);
        foreach (var series in family.Series)
            Series(series, names, report);
        foreach (var operation in family.Operations)
            Operation(operation, names, report);
    }

    private static void Kind(PartKind kind, FamilyNames names, FamilyReport report)
    {
        var field = $"kinds[{kind.Id}]";
        report.Require(kind.Material is null || names.HasMaterial(kind.Material), $"{field}.material", "material-unknown", $"There is no material '{kind.Material}'.");
        foreach (var c in kind.Characteristics)
        {
            foreach (var argument in Inputs.Of(c).Where(a => !names.HasCharacteristic(kind.Id, a)))
                report.Error($"{field}.characteristics[{c.Id}].derivedFrom", "characteristic-unknown", $"'{argument}' can't be found from '{kind.Id}'.");
        }
    }

    private static void Position(Position position, FamilyNames names, FamilyReport report)
    {
        var field = $"positions[{position.Id}]";
        report.Require(names.HasKind(position.Kind), $"{field}.kind", "kind-unknown", names.NoKind(position.Kind));
        report.Require(position.Quantity is >= 1 and <= 1000, $"{field}.quantity", "quantity-range", $"'{position.Quantity}' parts can't fill a place.");
        report.Require(position.Fewest is null || (position.Fewest >= 1 && position.Fewest <= position.Quantity), $"{field}.fewest", "quantity-range", "The fewest that will do is 1 to the quantity.");
        foreach (var o in position.Overrides)
        {
            var there = names.HasCharacteristic(position.Kind, new Address("", o.Characteristic));
            report.Require(there, $"{field}.overrides[{o.Characteristic}]", "characteristic-unknown", $"The kind '{position.Kind}' has no characteristic '{o.Characteristic}'.");
        }
    }

    private static void Loop(ClearanceLoop loop, FamilyNames names, FamilyReport report)
    {
        var closes = loop.Terms.Any(t => t.Numerator > 0) && loop.Terms.Any(t => t.Numerator < 0);
        report.Require(closes, $"loops[{loop.Id}].terms", "loop-open", "A clearance needs members that open the gap and members that close it.");
        foreach (var (term, i) in loop.Terms.Select((t, i) => (t, i)))
        {
            var field = $"loops[{loop.Id}].terms[{i}]";
            report.Require(term.Numerator != 0 && term.Denominator > 0, field, "coefficient-range", "A coefficient is not zero, and its denominator is positive.");
            Member(term.Of, field, names, report);
        }
    }

    private static void Member(Dim member, string field, FamilyNames names, FamilyReport report)
    {
        switch (member)
        {
            case OfPart part:
                report.Require(names.IsLengthAt(part.At), field, "address-unknown", $"'{part.At}' is not a length of any position.");
                break;
            case OfSeries series:
                report.Require(names.HasSeries(series.Series), $"{field}.series", "series-unknown", $"There is no series '{series.Series}'.");
                report.Require(names.HasPosition(series.Position), $"{field}.position", "position-unknown", $"There is no position '{series.Position}'.");
                report.Require(series.MaxPieces is >= 1 and <= 10, $"{field}.maxPieces", "quantity-range", "A pack has 1 to 10 pieces.");
                break;
        }
    }

    /// <summary>A piece is read by the characteristic <c>thickness</c> of its kind.</summary>
    private static void Series(Series series, FamilyNames names, FamilyReport report)
    {
        var field = $"series[{series.Id}].kind";
        report.Require(names.HasKind(series.Kind), field, "kind-unknown", names.NoKind(series.Kind));
        var read = names.HasCharacteristic(series.Kind, new Address("", "thickness"));
        report.Require(read, field, "characteristic-unknown", $"The kind '{series.Kind}' has no characteristic 'thickness' by which a piece is read.");
    }

    private static void Operation(Operation operation, FamilyNames names, FamilyReport report)
    {
        var field = $"operations[{operation.Id}]";
        report.Require(names.HasKind(operation.Kind), $"{field}.kind", "kind-unknown", names.NoKind(operation.Kind));
        report.Require(operation.Minutes >= 0, $"{field}.minutes", "minutes-range", "Bench time is not negative.");
        var reads = operation.Effects.Select(e => e.At).Concat(operation.RemeasureGate.Select(c => new Address("", c)));
        foreach (var at in reads.Where(at => !at.IsOfKind || !names.HasCharacteristic(operation.Kind, at)))
            report.Error(field, "characteristic-unknown", $"The kind '{operation.Kind}' has no characteristic '{at}'.");
        foreach (var e in operation.Effects.Where(e => e.MinChange > e.MaxChange || e.Step <= Length.Zero))
            report.Error($"{field}.effects[{e.At}]", "effect-range", "The least change comes before the most, and the step is positive.");
        foreach (var damage in operation.Mends.Where(d => !names.DamageOf(operation.Kind).Contains(d)))
            report.Error($"{field}.mends", "damage-unknown", $"The kind '{operation.Kind}' is not looked at for '{damage}'.");
    }
}
