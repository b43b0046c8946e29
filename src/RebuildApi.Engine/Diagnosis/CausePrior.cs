using RebuildApi.Contracts;
using RebuildApi.Engine.Numerics;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>
/// How common a cause is, as a beta distribution: a mean that is worth so many units. Its range is the middle 90 % of it.
/// </summary>
/// <param name="Cause">The cause.</param>
/// <param name="Declared">What the family declares.</param>
/// <param name="Mean">What stands now.</param>
/// <param name="Strength">How many units it is worth now.</param>
/// <param name="Units">How many closed units were counted into it.</param>
/// <param name="Confirmed">In how many of them the cause was confirmed.</param>
public sealed record CausePrior(string Cause, double Declared, double Mean, double Strength, int Units, int Confirmed)
{
    private const double Tail = 0.05;

    /// <summary>What a family declares.</summary>
    public static CausePrior Of(Cause cause) => new(cause.Id, cause.Prior, cause.Prior, cause.PriorStrength ?? Judged.PriorStrength, 0, 0);

    /// <summary>
    /// The declared prior with units counted in: a beta prior of mean π worth n units and k confirmed of N counted ones give the mean (π n + k) / (n + N),
    /// worth n + N units (the beta is conjugate to the binomial; A. Gelman et al., Bayesian Data Analysis, 2.4).
    /// </summary>
    /// <param name="cause">The cause as declared.</param>
    /// <param name="units">How many closed units have a confirmed diagnosis.</param>
    /// <param name="confirmed">In how many of them it was this cause.</param>
    public static CausePrior Counted(Cause cause, int units, int confirmed)
    {
        var declared = Of(cause);
        var strength = declared.Strength + units;
        return declared with { Mean = (declared.Mean * declared.Strength + confirmed) / strength, Strength = strength, Units = units, Confirmed = confirmed };
    }

    /// <summary>The mean with the middle 90 %; the mean itself where the distribution is so skewed that it lies outside.</summary>
    public Likelihood Range()
    {
        var (a, b) = (Mean * Strength, (1 - Mean) * Strength);
        return new Likelihood(Math.Min(Mean, BetaFunction.Quantile(a, b, Tail)), Mean, Math.Max(Mean, BetaFunction.Quantile(a, b, 1 - Tail)));
    }
}
