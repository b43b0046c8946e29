using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Server.Wire;

/// <summary>What is known of a value.</summary>
/// <param name="Value">The best estimate; absent when only bounds are known.</param>
/// <param name="StandardUncertainty">Standard uncertainty.</param>
/// <param name="DegreesOfFreedom">Effective degrees of freedom; absent means many.</param>
/// <param name="Low">A lower bound that is known.</param>
/// <param name="High">An upper bound that is known.</param>
/// <param name="Basis">What it rests on.</param>
/// <param name="Budget">What the uncertainty is made of.</param>
public sealed record EstimateWire(
    QuantityWire? Value,
    QuantityWire? StandardUncertainty,
    double? DegreesOfFreedom,
    QuantityWire? Low,
    QuantityWire? High,
    EstimateBasis Basis,
    ImmutableArray<ContributionWire> Budget)
{
    /// <summary>From the contract; null when nothing is known.</summary>
    public static EstimateWire? From(Estimate? estimate, Display show)
    {
        if (estimate is null || estimate.Basis == EstimateBasis.None)
            return null;
        var dimension = (estimate.Value ?? estimate.Low ?? estimate.High)?.Kind ?? Dimension.Length;
        return new(
            show.OfMaybe(estimate.Value),
            estimate.Value is null ? null : show.Difference(estimate.StandardUncertainty, dimension),
            Numbers.Finite(estimate.DegreesOfFreedom),
            show.OfMaybe(estimate.Low),
            show.OfMaybe(estimate.High),
            estimate.Basis,
            [.. estimate.Budget.Select(c => ContributionWire.From(c, dimension, show))]);
    }
}

/// <summary>One line of an uncertainty budget.</summary>
/// <param name="Name">What it comes from.</param>
/// <param name="StandardUncertainty">Its standard uncertainty, with its sensitivity applied.</param>
/// <param name="DegreesOfFreedom">Its degrees of freedom; absent means many.</param>
/// <param name="Share">Its share of the variance, 0 to 1.</param>
public sealed record ContributionWire(string Name, QuantityWire StandardUncertainty, double? DegreesOfFreedom, double? Share) : IInWords
{
    /// <summary>From the contract.</summary>
    public static ContributionWire From(Contribution c, Dimension dimension, Display show) =>
        new(c.Name, show.Difference(c.StandardUncertainty, dimension), Numbers.Finite(c.DegreesOfFreedom), Numbers.Finite(c.Share));

    /// <inheritdoc/>
    public string InWords() => $"{Name} {StandardUncertainty.Value.Text} {StandardUncertainty.Unit}";
}

/// <summary>Estimates as JSON numbers.</summary>
public static class Numbers
{
    /// <summary>The number to nine digits; null when it is missing or not finite, which JSON can't say.</summary>
    public static double? Finite(double? value) => value is { } v && double.IsFinite(v)
        ? double.Parse(v.ToString("G9", System.Globalization.CultureInfo.InvariantCulture), System.Globalization.CultureInfo.InvariantCulture)
        : null;
}
