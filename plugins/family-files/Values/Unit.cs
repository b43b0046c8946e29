namespace FamilyFiles.Values;

/// <summary>A unit as a shop writes it, and what it makes of a number.</summary>
/// <param name="Names">How it is written; the first is how this program writes it.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="ToSi">From a number to SI. Lengths do not pass through here: they stay exact.</param>
internal sealed record Unit(ImmutableArray<string> Names, Dimension Dimension, Func<double, double> ToSi)
{
    private const double NewtonsPerPoundForce = 4.4482216152605;
    private const double NewtonMetresPerFootPound = 1.3558179483314004;

    /// <summary>Units that are not lengths. Factors: NIST SP 811 (2008), Appendix B.</summary>
    public static ImmutableArray<Unit> All { get; } =
    [
        new(["deg", "°"], Dimension.Angle, v => v * Math.PI / 180),
        new(["rad"], Dimension.Angle, v => v),
        new(["N"], Dimension.Force, v => v),
        new(["lbf"], Dimension.Force, v => v * NewtonsPerPoundForce),
        new(["N.m", "N·m", "Nm"], Dimension.Torque, v => v),
        new(["ft.lbf", "ft·lbf"], Dimension.Torque, v => v * NewtonMetresPerFootPound),
        new(["L", "l"], Dimension.Volume, v => v / 1000),
        new(["mL", "ml"], Dimension.Volume, v => v / 1_000_000),
        new(["m3"], Dimension.Volume, v => v),
        new(["kg"], Dimension.Mass, v => v),
        new(["g"], Dimension.Mass, v => v / 1000),
        new(["degC", "°C"], Dimension.Temperature, v => v + 273.15),
        new(["K"], Dimension.Temperature, v => v),
        new(["HV"], Dimension.Hardness, v => v),
        new(["pcs"], Dimension.Count, v => v),
        new([""], Dimension.Ratio, v => v),
        new(["%"], Dimension.Ratio, v => v / 100),
    ];
}
