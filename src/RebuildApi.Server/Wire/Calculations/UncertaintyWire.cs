using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>A value with its uncertainty and what that is made of.</summary>
/// <param name="Value">The best estimate; absent for a bare budget, and where only bounds are known.</param>
/// <param name="Low">A lower bound that is known.</param>
/// <param name="High">An upper bound that is known.</param>
/// <param name="StandardUncertainty">Combined standard uncertainty.</param>
/// <param name="DegreesOfFreedom">Effective degrees of freedom; absent means many.</param>
/// <param name="CoverageFactor">k.</param>
/// <param name="FactorFreedom">Whole degrees of freedom that k was taken for: cut down, never rounded up; absent means many.</param>
/// <param name="ExpandedUncertainty">U = k·u.</param>
/// <param name="Budget">The lines with their shares.</param>
public sealed record UncertaintyWire(
    QuantityWire? Value,
    QuantityWire? Low,
    QuantityWire? High,
    QuantityWire StandardUncertainty,
    double? DegreesOfFreedom,
    double? CoverageFactor,
    int? FactorFreedom,
    QuantityWire ExpandedUncertainty,
    ImmutableArray<ContributionWire> Budget)
{
    /// <summary>From the engine.</summary>
    public static UncertaintyWire From(Estimate estimate, ExpandedUncertainty expanded, Dimension dimension, Display show) => new(
        show.OfMaybe(estimate.Value),
        show.OfMaybe(estimate.Low),
        show.OfMaybe(estimate.High),
        show.Difference(estimate.StandardUncertainty, dimension),
        Numbers.Finite(estimate.DegreesOfFreedom),
        Numbers.Finite(expanded.Factor),
        expanded.DegreesOfFreedom,
        show.Difference(expanded.Uncertainty, dimension),
        [.. estimate.Budget.Select(c => ContributionWire.From(c, dimension, show))]);
}
