using FamilyFiles.Yaml;

namespace FamilyFiles.Writing;

/// <summary>Writes quantities so that they read back to the very same numbers: in inches or millimetres as the family is drawn, angles in degrees.</summary>
/// <param name="inches">Whether lengths are written in inches where that is exact.</param>
internal sealed class Figures(bool inches)
{
    /// <summary>Figures in the unit in which most lengths of a family come out short.</summary>
    public static Figures For(Family family)
    {
        var lengths = family.Kinds.SelectMany(k => k.Characteristics).SelectMany(c => new[] { c.New, c.Service }).Concat(family.Loops.Select(l => (Limits?)l.Window))
            .OfType<Limits>().SelectMany(l => new[] { l.Low, l.High }).OfType<Exact>().Select(e => e.Value).Where(v => v != RebuildApi.Contracts.Length.Zero).ToList();
        return new Figures(2 * lengths.Count(IsShortInInches) > lengths.Count);
    }

    public string Length(Length value)
    {
        var (number, unit) = Parts(new Exact(value));
        return $"{number} {unit}";
    }

    public string Quantity(Quantity value)
    {
        var (number, unit) = Parts(value);
        return unit.Length == 0 ? number : $"{number} {unit}";
    }

    public string Angle(double radians) => Quantity(new Real(radians, Dimension.Angle));

    public string Temperature(double kelvin) => Quantity(new Real(kelvin, Dimension.Temperature));

    /// <summary>Limits without their source.</summary>
    public string Window(Quantity? low, Quantity? high, Quantity? target)
    {
        var unit = UnitFor([.. new[] { low, high, target }.OfType<Quantity>()]);
        var after = unit.Length == 0 ? "" : " " + unit;
        var text = (low, high) switch
        {
            (null, not null) => $"at most {In(high, unit)}{after}",
            (not null, null) => $"at least {In(low, unit)}{after}",
            _ when low!.Equals(high) && target is null => $"exactly {In(low, unit)}{after}",
            _ => $"{In(low!, unit)} to {In(high!, unit)}{after}",
        };
        return target is null ? text : $"{text}, target {In(target, unit)}";
    }

    private (string Number, string Unit) Parts(Quantity value)
    {
        var unit = UnitFor([value]);
        return (In(value, unit), unit);
    }

    /// <summary>The unit in which all of them are exact.</summary>
    private string UnitFor(ImmutableArray<Quantity> values) => values[0] switch
    {
        Exact => inches && values.All(v => IsShortInInches(((Exact)v).Value)) ? "in" : "mm",
        Real { Dimension: Dimension.Angle } => values.All(v => Degrees(v.InSi) is not null) ? "deg" : "rad",
        Real { Dimension: Dimension.Temperature } => values.All(v => Celsius(v.InSi) is not null) ? "degC" : "K",
        Real { Dimension: Dimension.Volume } => values.All(v => Litres(v.InSi) is not null) ? "L" : "m3",
        Real other => Values.Unit.All.First(u => u.Dimension == other.Dimension).Names[0],
        _ => throw new NotSupportedException($"A quantity of the kind {values[0].GetType().Name} can't be written."),
    };

    private static string In(Quantity value, string unit) => (value, unit) switch
    {
        (Exact e, "in") => e.Value.InInches.ToString("0.000###", CultureInfo.InvariantCulture),
        (Exact e, _) => e.Value.InMillimetres.ToString("0.00####", CultureInfo.InvariantCulture),
        (_, "deg") => Degrees(value.InSi)!,
        (_, "L") => Litres(value.InSi)!,
        (_, "degC") => Celsius(value.InSi)!,
        _ => value.InSi.ToString("R", CultureInfo.InvariantCulture),
    };

    private static string? Degrees(double radians) => Exactly(radians * 180 / Math.PI, d => d * Math.PI / 180, radians);

    private static string? Litres(double cubicMetres) => Exactly(cubicMetres * 1000, l => l / 1000, cubicMetres);

    private static string? Celsius(double kelvin) => Exactly(kelvin - 273.15, c => c + 273.15, kelvin);

    /// <summary>The shortest decimal that reads back to the very same number, or null.</summary>
    private static string? Exactly(double value, Func<double, double> back, double wanted) => Enumerable.Range(0, 12)
        .Select(digits => Math.Round(value, digits).ToString("R", CultureInfo.InvariantCulture))
        .FirstOrDefault(t => back(double.Parse(t, CultureInfo.InvariantCulture)).Equals(wanted));

    private static bool IsShortInInches(Length value) => value.Nanometres % 25 == 0 && decimal.Round(value.InInches, 5) == value.InInches;
}
