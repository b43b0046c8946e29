using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;

namespace RebuildApi.Engine.Clearances;

/// <summary>Compares the gap by parts with the gap by trial assembly, and puts the two together when they agree.</summary>
internal static class Reconciliation
{
    /// <summary>
    /// The alarm, or nothing when they agree: |trial − parts| &gt; 2·√(u_parts² + u_trial²). A bound disagrees when the parts lie that far beyond it.
    /// </summary>
    public static MixUp? Compare(ClearanceLoop loop, Estimate parts, TrialGap trial, EstimateBook book)
    {
        if (parts.Value is not Exact byParts || Residual(byParts.Value, trial.Estimate) is not { } residual)
            return null;
        var u = Math.Sqrt((parts.StandardUncertainty * parts.StandardUncertainty) + (trial.Estimate.StandardUncertainty * trial.Estimate.StandardUncertainty));
        if (Math.Abs(residual.InMetres) <= MixUp.Coverage * u)
            return null;
        var reach = Length.NearestToMetres(MixUp.Coverage * u);
        var likely = MixUpCauses.Of(loop, trial.Trial, book)
            .Select(c => c.Cause with { Left = residual + c.ChangeOfResidual })
            .Where(c => Magnitude(c.Left) <= reach)
            .OrderBy(c => c.Slip).ThenBy(c => Magnitude(c.Left)).ThenBy(c => c.At, StringComparer.Ordinal).ThenBy(c => c.Meant, StringComparer.Ordinal);
        return new MixUp(residual, u, [.. likely]);
    }

    /// <summary>The weighted mean, weights 1/u²; the exact one alone where one has no doubt.</summary>
    public static Estimate Combine(Estimate parts, Estimate trial)
    {
        if (parts.Value is null)
            return trial.Value is null && parts.Basis != EstimateBasis.None ? parts : trial;
        if (trial.Value is null)
            return parts;
        var (a, b) = (parts.StandardUncertainty, trial.StandardUncertainty);
        if (a == 0 || b == 0)
            return b == 0 ? trial : parts;
        var weight = b * b / ((a * a) + (b * b));
        var value = Length.NearestToMetres((weight * parts.Value.InSi) + ((1 - weight) * trial.Value.InSi));
        var u = a * b / Math.Sqrt((a * a) + (b * b));
        var budget = ImmutableArray.Create(
            new Contribution("parts", weight * a, parts.DegreesOfFreedom, weight * weight * a * a / (u * u)),
            new Contribution("trial", (1 - weight) * b, trial.DegreesOfFreedom, (1 - weight) * (1 - weight) * b * b / (u * u)));
        return new Estimate(new Exact(value), u, Budget.EffectiveDegreesOfFreedom(budget), null, null, EstimateBasis.Combined, budget);
    }

    private static Length? Residual(Length byParts, Estimate trial) => trial switch
    {
        { Value: Exact value } => value.Value - byParts,
        { High: Exact high } when byParts > high.Value => high.Value - byParts,
        { Low: Exact low } when byParts < low.Value => low.Value - byParts,
        _ => null,
    };

    private static Length Magnitude(Length length) => length < Length.Zero ? -length : length;
}
