using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Clearances;

/// <summary>A clearance summed from its members.</summary>
/// <param name="Estimate">The gap: Σ coefficient × dimension, with u = √Σ uᵢ²; basis none when a member is unknown.</param>
/// <param name="WorstLow">The smallest gap that the tolerances allow: value − Σ half-widths.</param>
/// <param name="WorstHigh">The largest gap that the tolerances allow: value + Σ half-widths.</param>
/// <param name="RootSumSquare">Statistical half-width, metres: √Σ half-width².</param>
/// <param name="Terms">The members with their shares.</param>
public sealed record LoopValue(Estimate Estimate, Length? WorstLow, Length? WorstHigh, double? RootSumSquare, ImmutableArray<TermValue> Terms)
{
    /// <summary>Sums members: exactly in whole nanometres, uncertainties as root-sum-square (JCGM 100:2008, 5.1.2, independent inputs).</summary>
    /// <param name="terms">The members.</param>
    public static LoopValue Sum(ImmutableArray<TermValue> terms)
    {
        if (terms.Any(t => t.IsUnknown))
            return new LoopValue(TermValue.Unknown, null, null, null, terms);
        var u = Math.Sqrt(terms.Sum(t => t.StandardUncertainty * t.StandardUncertainty));
        var shared = terms.Select(t => t with { Share = u > 0 ? t.StandardUncertainty * t.StandardUncertainty / (u * u) : 0 }).ToImmutableArray();
        return terms.All(t => t.Estimate.Value is not null) ? Valued(shared, u) : Bounded(shared, u);
    }

    private static LoopValue Valued(ImmutableArray<TermValue> terms, double u)
    {
        var value = Ratio.Sum(terms.Select(t => (t.Term.Numerator, t.Term.Denominator, LengthOf(t.Estimate.Value!))));
        var worst = Length.NearestToMetres(terms.Sum(t => t.HalfWidth));
        var estimate = new Estimate(new Exact(value), u, DegreesOfFreedom(terms, u), null, null, BasisOf(terms), BudgetOf(terms));
        return new LoopValue(estimate, value - worst, value + worst, Math.Sqrt(terms.Sum(t => t.HalfWidth * t.HalfWidth)), terms);
    }

    /// <summary>Some members are only bounded, so the gap is.</summary>
    private static LoopValue Bounded(ImmutableArray<TermValue> terms, double u)
    {
        var estimate = new Estimate(null, u, null, Bound(terms, low: true), Bound(terms, low: false), BasisOf(terms), BudgetOf(terms));
        return new LoopValue(estimate, null, null, null, terms);
    }

    private static Exact? Bound(ImmutableArray<TermValue> terms, bool low)
    {
        var ends = terms.Select(t => (t.Term, End: t.Estimate.Value ?? (low == t.Term.Numerator > 0 ? t.Estimate.Low : t.Estimate.High))).ToArray();
        return ends.Any(e => e.End is null)
            ? null
            : new Exact(Ratio.Sum(ends.Select(e => (e.Term.Numerator, e.Term.Denominator, LengthOf(e.End!)))));
    }

    /// <summary>Welch–Satterthwaite (JCGM 100:2008, G.4.1): ν = u⁴ / Σ (uᵢ⁴ / νᵢ).</summary>
    private static double? DegreesOfFreedom(ImmutableArray<TermValue> terms, double u)
    {
        var sum = terms.Where(t => t.Estimate.DegreesOfFreedom is > 0).Sum(t => Math.Pow(t.StandardUncertainty, 4) / t.Estimate.DegreesOfFreedom!.Value);
        return sum > 0 ? Math.Pow(u, 4) / sum : null;
    }

    private static EstimateBasis BasisOf(ImmutableArray<TermValue> terms) =>
        terms.Any(t => t.Estimate.Basis == EstimateBasis.Drawing) ? EstimateBasis.Drawing : EstimateBasis.Measured;

    private static ImmutableArray<Contribution> BudgetOf(ImmutableArray<TermValue> terms) =>
        [.. terms.Where(t => t.StandardUncertainty > 0).Select(t => new Contribution(t.Name, t.StandardUncertainty, t.Estimate.DegreesOfFreedom, t.Share))];

    private static Length LengthOf(Quantity quantity) => quantity is Exact exact
        ? exact.Value
        : throw new ArgumentException($"A clearance adds lengths, not {quantity.Kind}.", nameof(quantity));
}
