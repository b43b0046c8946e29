using RebuildApi.Contracts;

namespace RebuildApi.Engine.MonteCarlo;

/// <summary>An estimate as an input of a Monte Carlo propagation, in SI.</summary>
public static class EstimateInput
{
    /// <summary>Student's t where the degrees of freedom are finite, else normal.</summary>
    /// <exception cref="ArgumentException">Only bounds are known.</exception>
    public static InputDistribution Of(Estimate estimate)
    {
        if (estimate.Value is not { } value)
            throw new ArgumentException("A value that is only bounded has no distribution.", nameof(estimate));
        return estimate is { DegreesOfFreedom: { } nu, StandardUncertainty: > 0 }
            ? new StudentInput(value.InSi, estimate.StandardUncertainty, nu)
            : new NormalInput(value.InSi, estimate.StandardUncertainty);
    }
}
