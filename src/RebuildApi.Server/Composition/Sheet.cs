using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Composition;

/// <summary>The teardown sheet of a family: everything to look at and to read, in stripping order, then the clearances to try.</summary>
public sealed class Sheet(FamilyIndex index, Display show)
{
    /// <summary>Its rows.</summary>
    public ImmutableArray<SheetRowWire> Rows()
    {
        var positions = index.Family.Positions.OrderBy(p => p.StripOrder).ThenBy(p => p.Id, StringComparer.Ordinal);
        var parts = positions.SelectMany(p => Enumerable.Range(1, p.Quantity).SelectMany(i => OfPart(p, i)));
        var trials = index.Family.Loops.Where(l => l.Trial != TrialMethod.None).Select(OfTrial);
        return [.. parts.Concat(trials).Select((row, i) => row with { Row = i + 1 })];
    }

    private IEnumerable<SheetRowWire> OfPart(Position position, int number)
    {
        var kind = index.Kinds[position.Kind];
        var place = Subjects.Of(position.Id, number);
        var part = show.Words(position.Name);
        yield return new(0, position.Group, place, part, "inspection", "condition", "Look for damage, or write sound", string.Join(" | ", kind.DamageClasses), null, null, null, null, null);
        foreach (var attribute in kind.Attributes)
            yield return new(0, position.Group, place, part, "attribute", attribute.Id, show.Words(attribute.Name), string.Join(" | ", attribute.Values.Select(v => v.Id)), null, null, null, null, null);
        foreach (var characteristic in kind.Characteristics.Where(c => c.DerivedFrom is null))
            yield return OfReading(position, place, part, characteristic);
    }

    private SheetRowWire OfReading(Position position, string place, string part, Characteristic characteristic)
    {
        var limits = LimitsWire.From(index.ServiceLimitsAt(new Address(position.Id, characteristic.Id)), show);
        var unit = show.Si(0, characteristic.Dimension).Unit;
        return new(0, position.Group, place, part, "reading", characteristic.Id, show.Words(characteristic.Name), string.Join(" | ", characteristic.Methods),
            limits?.Low?.Value, limits?.High?.Value, unit, characteristic.MinimumReadings, unit);
    }

    private SheetRowWire OfTrial(ClearanceLoop loop)
    {
        var window = LimitsWire.From(loop.Window, show)!;
        var pieces = loop.Terms.Select(t => t.Of).OfType<OfSeries>().SelectMany(s => index.Series[s.Series].Members).Select(m => m.Id);
        return new(0, loop.Group, loop.Id, show.Words(loop.Name), "trial", loop.Id, "Fit a known piece, read the gap, or write tight", string.Join(" | ", pieces),
            window.Low?.Value, window.High?.Value, (window.Low ?? window.High)!.Unit, 1, (window.Low ?? window.High)!.Unit);
    }
}
