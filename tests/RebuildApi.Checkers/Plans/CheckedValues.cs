using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Plans;

/// <summary>What is known of each characteristic of a unit: readings before a derivation, a derivation before the drawing.</summary>
public sealed class CheckedValues(CheckedUnit unit)
{
    private readonly Dictionary<(string, int, string), CheckedValue?> _known = [];

    public CheckedUnit Unit => unit;

    /// <summary>What is known at a place; none when nothing is.</summary>
    public CheckedValue? At(string position, int index, string characteristic)
    {
        var key = (position, index, characteristic);
        if (_known.TryGetValue(key, out var known))
            return known;
        _known[key] = null;
        return _known[key] = unit.At(position, index) is { } part && unit.CharacteristicAt(position, characteristic) is { } wanted ? Work(part, position, index, wanted) : null;
    }

    /// <summary>What was read of a part at a place.</summary>
    public CheckedReadings ReadingsAt(Component part, Characteristic characteristic) => new(part, characteristic, unit);

    private CheckedValue? Work(Component part, string position, int index, Characteristic wanted) =>
        ReadingsAt(part, wanted).Of(wanted.Report) ?? Derived(position, index, wanted) ?? Drawn(position, wanted);

    private CheckedValue? Derived(string position, int index, Characteristic wanted) => wanted.DerivedFrom switch
    {
        Linear linear => SumOf([.. linear.Terms.Select(t => (Factor: (double)t.Numerator / t.Denominator, Value: t.Of switch
        {
            Fixed length => CheckedValue.Exactly(length.Value.Nanometres),
            OfPart p => Input(p.At, position, index),
            _ => null,
        }))]),
        Named named => Functions.Of(named, a => Input(a, position, index) is { } v ? (v, Scale(a, position)) : null, wanted.Dimension == Dimension.Length ? 1e-9 : 1),
        _ => null,
    };

    private static CheckedValue? SumOf((double Factor, CheckedValue? Value)[] terms) => terms.Any(t => t.Value is null)
        ? null
        : CheckedValue.Sum([.. terms.Select(t => (t.Factor, t.Value!))], terms.Any(t => t.Value!.From == EstimateBasis.Drawing) ? EstimateBasis.Drawing : EstimateBasis.Derived);

    private CheckedValue? Input(Address at, string position, int index) => at.IsOfKind || at.Position == position ? At(position, index, at.Characteristic) : At(at.Position, 1, at.Characteristic);

    private double Scale(Address at, string position) =>
        unit.CharacteristicAt(at.IsOfKind ? position : at.Position, at.Characteristic)?.Dimension == Dimension.Length ? 1e-9 : 1;

    /// <summary>The middle of the drawing, spread as the family says: √3 rectangular, √6 triangular, 3 normal.</summary>
    private CheckedValue? Drawn(string position, Characteristic wanted)
    {
        var limits = unit.DrawnAt(position, wanted.Id);
        if (wanted.Unmeasured == Distribution.None || CheckedValue.Number(limits?.Low) is not { } low || CheckedValue.Number(limits?.High) is not { } high)
            return null;
        var divisor = wanted.Unmeasured switch { Distribution.Triangular => Math.Sqrt(6), Distribution.Normal => 3, _ => Math.Sqrt(3) };
        return new CheckedValue((low + high) / 2, (high - low) / 2 / divisor, double.PositiveInfinity, EstimateBasis.Drawing);
    }
}
