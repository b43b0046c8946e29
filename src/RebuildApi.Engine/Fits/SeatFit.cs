using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Numerics;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Fits;

/// <summary>A measured bore with a measured ring or journal in it, at 20 °C and at temperature.</summary>
/// <param name="Clearance">Bore minus what sits in it at 20 °C; negative is interference.</param>
/// <param name="StandardUncertainty">Its standard uncertainty, metres.</param>
/// <param name="Change">Change of the clearance at temperature, metres: D·(α_outer − α_inner)·ΔT.</param>
/// <param name="ThereClearance">Clearance at temperature, to the nearest nanometre.</param>
/// <param name="ThereUncertainty">Its standard uncertainty, metres, the doubt of both expansion coefficients included.</param>
/// <param name="LooseChance">Chance that the fit is loose there: the clearance is above zero.</param>
/// <param name="Reasons">What follows: a ring that has to be tight may creep, or is tight enough.</param>
public sealed record SeatFit(
    Length Clearance, double StandardUncertainty, double Change, Length ThereClearance, double ThereUncertainty, double LooseChance, ImmutableArray<Reason> Reasons)
{
    private const string Rule = "fit";

    /// <summary>Chance of being loose from which a warning is given: one in twenty.</summary>
    public const double Warning = 0.05;

    /// <summary>Judges a seat.</summary>
    /// <param name="bore">The bore; a length, in metres its uncertainty.</param>
    /// <param name="inner">The ring or journal that sits in it.</param>
    /// <param name="outerMaterial">Of the part with the bore.</param>
    /// <param name="innerMaterial">Of the part in it.</param>
    /// <param name="kelvin">Temperature of both.</param>
    /// <param name="mustBeTight">Whether the ring must not turn on its seat.</param>
    /// <exception cref="ArgumentException">A size is missing or not positive, or the temperature is none.</exception>
    public static SeatFit Of(Estimate bore, Estimate inner, Material outerMaterial, Material innerMaterial, double kelvin, bool mustBeTight)
    {
        if (!double.IsFinite(kelvin) || kelvin <= 0)
            throw new ArgumentException("That is not a temperature in kelvin.", nameof(kelvin));
        var (outside, inside) = (SizeOf(bore, nameof(bore)), SizeOf(inner, nameof(inner)));
        var warmer = kelvin - ThermalGap.Reference;
        var change = warmer * ((outside.InMetres * outerMaterial.ExpansionPerKelvin) - (inside.InMetres * innerMaterial.ExpansionPerKelvin));
        var u = Root(bore.StandardUncertainty, inner.StandardUncertainty);
        var there = Root(u, Doubt(outside, outerMaterial, warmer), Doubt(inside, innerMaterial, warmer));
        var clearance = outside - inside;
        var hot = clearance + Length.NearestToMetres(change);
        var loose = there > 0 ? StandardNormal.Cdf(hot.InMetres / there) : hot > Length.Zero ? 1 : 0;
        return new SeatFit(clearance, u, change, hot, there, loose, ReasonsFor(hot, loose, kelvin, mustBeTight));
    }

    private static ImmutableArray<Reason> ReasonsFor(Length there, double loose, double kelvin, bool mustBeTight) => (mustBeTight, loose >= Warning) switch
    {
        (false, _) => [],
        (true, true) => [Because.Of("fit-ring-may-creep", Rule, ("clearanceNm", there), ("celsius", kelvin - 273.15), ("chance", loose))],
        _ => [Because.Of("fit-ring-stays-tight", Rule, ("clearanceNm", there), ("celsius", kelvin - 273.15))],
    };

    private static double Doubt(Length size, Material material, double warmer) => size.InMetres * warmer * material.ExpansionHalfWidth / Math.Sqrt(3);

    private static double Root(params ReadOnlySpan<double> parts)
    {
        var sum = 0.0;
        foreach (var part in parts)
            sum += part * part;
        return Math.Sqrt(sum);
    }

    private static Length SizeOf(Estimate estimate, string name) => estimate.Value is Exact { Value: var size } && size > Length.Zero
        ? size
        : throw new ArgumentException("A fit needs a size above zero.", name);
}
