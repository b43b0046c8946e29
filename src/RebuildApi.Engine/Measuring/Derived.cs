using RebuildApi.Contracts;
using RebuildApi.Engine.MonteCarlo;

namespace RebuildApi.Engine.Measuring;

/// <summary>A derived value, with the trials that it was found by where the straight line through its formula did not do.</summary>
/// <param name="Estimate">The value.</param>
/// <param name="Trials">The trials, in SI; none where the first order does.</param>
internal sealed record Derived(Estimate Estimate, MonteCarloResult? Trials)
{
    public static implicit operator Derived(Estimate estimate) => new(estimate, null);
}
