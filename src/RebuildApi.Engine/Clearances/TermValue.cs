using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Clearances;

/// <summary>One member of a clearance with what is known of it and what it adds to the doubt about the gap.</summary>
/// <param name="Term">The member.</param>
/// <param name="Name">Its address, <c>series at position</c>, or <c>fixed</c>.</param>
/// <param name="Estimate">What is known of the dimension itself, before the coefficient.</param>
/// <param name="HalfWidth">Half-width in the gap, metres: drawing half-width where it is not measured, twice the standard uncertainty where it is; coefficient applied.</param>
/// <param name="StandardUncertainty">Standard uncertainty in the gap, metres, coefficient applied.</param>
/// <param name="Share">Share of the variance of the gap, 0..1: the largest one is what to measure better.</param>
public sealed record TermValue(Term Term, string Name, Estimate Estimate, double HalfWidth, double StandardUncertainty, double Share)
{
    /// <summary>Whether nothing at all is known of it.</summary>
    public bool IsUnknown => Estimate.Basis == EstimateBasis.None;

    /// <summary>A member with its coefficient applied; the share is found when the loop is summed.</summary>
    public static TermValue Of(Term term, string name, Estimate estimate)
    {
        var sensitivity = Math.Abs((double)term.Numerator / term.Denominator);
        var u = sensitivity * estimate.StandardUncertainty;
        return new TermValue(term, name, estimate, sensitivity * HalfWidthOf(estimate), u, 0);
    }

    /// <summary>An exact dimension.</summary>
    public static Estimate Exactly(Length value) => new(new Exact(value), 0, null, null, null, EstimateBasis.Measured, []);

    /// <summary>A dimension that is only known by its tolerance: rectangular, u = half-width / √3.</summary>
    public static Estimate Within(Length middle, Length halfWidth) => new(
        new Exact(middle), halfWidth.InMetres / Math.Sqrt(3), null, new Exact(middle - halfWidth), new Exact(middle + halfWidth), EstimateBasis.Drawing, []);

    /// <summary>Nothing is known.</summary>
    public static Estimate Unknown { get; } = new(null, 0, null, null, null, EstimateBasis.None, []);

    private static double HalfWidthOf(Estimate estimate) => estimate is { Basis: EstimateBasis.Drawing, Value: { } value, Low: { } low, High: { } high }
        ? Math.Max(high.InSi - value.InSi, value.InSi - low.InSi)
        : 2 * estimate.StandardUncertainty;
}
