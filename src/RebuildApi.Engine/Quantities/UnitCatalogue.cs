using System.Collections.Immutable;
using RebuildApi.Contracts;
using UnitsNet;
using UnitsNet.Units;

namespace RebuildApi.Engine.Quantities;

/// <summary>
/// The units that the service understands: UCUM codes beside the words that shops use. Lengths are exact whole nanometres
/// (1 in = 25.4 mm, NIST SP 811 B.8); the factors of all others are the units library's.
/// </summary>
public static class UnitCatalogue
{
    private const double MetresPerInch = 0.0254;

    /// <summary>All units.</summary>
    public static ImmutableArray<UnitOfMeasure> All { get; } =
    [
        new LengthUnit("mm", "mm", ["millimetre", "millimeter"], 1_000_000),
        new LengthUnit("um", "µm", ["μm", "micron", "micrometre", "micrometer"], 1_000),
        new LengthUnit("m", "m", ["metre", "meter"], 1_000_000_000),
        new LengthUnit("cm", "cm", ["centimetre", "centimeter"], 10_000_000),
        new LengthUnit("nm", "nm", ["nanometre", "nanometer"], 1),
        new LengthUnit("[in_i]", "in", ["inch", "inches", "\""], 25_400_000),
        new LengthUnit("[mil_i]", "thou", ["mil", "mils"], 25_400),
        Angles("deg", "°", ["degree", "degrees"], AngleUnit.Degree),
        Angles("rad", "rad", ["radian", "radians"], AngleUnit.Radian),
        Angles("'", "arcmin", ["minute of arc"], AngleUnit.Arcminute),
        Forces("N", "N", ["newton"], ForceUnit.Newton),
        Forces("[lbf_av]", "lbf", [], ForceUnit.PoundForce),
        Forces("kgf", "kgf", ["kp"], ForceUnit.KilogramForce),
        Torques("N.m", "N·m", ["Nm", "N m"], TorqueUnit.NewtonMeter),
        Torques("[ft_i].[lbf_av]", "ft·lbf", ["ft lbf", "lbf·ft", "lbf ft", "ft-lb", "lb-ft", "ft.lbf"], TorqueUnit.PoundForceFoot),
        Torques("[in_i].[lbf_av]", "in·lbf", ["in lbf", "lbf·in", "lbf in", "in-lb", "lb-in", "in.lbf"], TorqueUnit.PoundForceInch),
        Torques("kgf.m", "kgf·m", ["kgf m", "m·kgf"], TorqueUnit.KilogramForceMeter),
        new RealUnit(
            "[oz_av].[g].[in_i]", "ozf·in", ["ozf in", "in·ozf", "oz-in", "in-oz"], Dimension.Torque,
            x => Force.FromOunceForce(x).Newtons * MetresPerInch, x => Force.FromNewtons(x / MetresPerInch).OunceForce),
        Masses("g", "g", ["gram"], MassUnit.Gram),
        Masses("kg", "kg", ["kilogram"], MassUnit.Kilogram),
        Masses("[lb_av]", "lb", ["pound"], MassUnit.Pound),
        Masses("[oz_av]", "oz", ["ounce"], MassUnit.Ounce),
        Volumes("L", "L", ["l", "litre", "liter"], VolumeUnit.Liter),
        Volumes("mL", "mL", ["ml", "millilitre", "milliliter"], VolumeUnit.Milliliter),
        Volumes("m3", "m³", [], VolumeUnit.CubicMeter),
        Volumes("[pt_us]", "US pt", ["pt", "pint"], VolumeUnit.UsPint),
        Volumes("[qt_us]", "US qt", ["qt", "quart"], VolumeUnit.UsQuart),
        Temperatures("Cel", "°C", ["C", "degC"], TemperatureUnit.DegreeCelsius),
        Temperatures("[degF]", "°F", ["F", "degF"], TemperatureUnit.DegreeFahrenheit),
        Temperatures("K", "K", ["kelvin"], TemperatureUnit.Kelvin),
        new RealUnit("[HV]", "HV", ["hv"], Dimension.Hardness, x => x, x => x),
        new RealUnit("{count}", "count", ["pcs", "pieces", "1"], Dimension.Count, x => x, x => x),
        new RealUnit("1", "1", ["ratio"], Dimension.Ratio, x => x, x => x),
        new RealUnit("%", "%", ["percent"], Dimension.Ratio, x => x / 100, x => x * 100),
    ];

    /// <summary>The unit that a text names for a dimension, or null.</summary>
    public static UnitOfMeasure? Find(string text, Dimension dimension) => All.FirstOrDefault(u => u.Dimension == dimension && u.IsCalled(text));

    /// <summary>A unit of any dimension that a text names, or null.</summary>
    public static UnitOfMeasure? Find(string text) => All.FirstOrDefault(u => u.IsCalled(text));

    /// <summary>How the units of a dimension are written, for messages.</summary>
    public static ImmutableArray<string> SymbolsOf(Dimension dimension) => [.. All.Where(u => u.Dimension == dimension).Select(u => u.Symbol)];

    private static RealUnit Angles(string ucum, string symbol, ImmutableArray<string> words, AngleUnit unit) =>
        new(ucum, symbol, words, Dimension.Angle, x => Angle.From(x, unit).Radians, x => Angle.FromRadians(x).As(unit));

    private static RealUnit Forces(string ucum, string symbol, ImmutableArray<string> words, ForceUnit unit) =>
        new(ucum, symbol, words, Dimension.Force, x => Force.From(x, unit).Newtons, x => Force.FromNewtons(x).As(unit));

    private static RealUnit Torques(string ucum, string symbol, ImmutableArray<string> words, TorqueUnit unit) =>
        new(ucum, symbol, words, Dimension.Torque, x => Torque.From(x, unit).NewtonMeters, x => Torque.FromNewtonMeters(x).As(unit));

    private static RealUnit Masses(string ucum, string symbol, ImmutableArray<string> words, MassUnit unit) =>
        new(ucum, symbol, words, Dimension.Mass, x => Mass.From(x, unit).Kilograms, x => Mass.FromKilograms(x).As(unit));

    private static RealUnit Volumes(string ucum, string symbol, ImmutableArray<string> words, VolumeUnit unit) =>
        new(ucum, symbol, words, Dimension.Volume, x => Volume.From(x, unit).CubicMeters, x => Volume.FromCubicMeters(x).As(unit));

    private static RealUnit Temperatures(string ucum, string symbol, ImmutableArray<string> words, TemperatureUnit unit) =>
        new(ucum, symbol, words, Dimension.Temperature, x => Temperature.From(x, unit).Kelvins, x => Temperature.FromKelvins(x).As(unit));
}
