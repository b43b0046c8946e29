using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Numerics;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Planning;

/// <summary>Clearances as whole sums: every length times the common denominator of the loop, read doubt as a variance that narrows the window.</summary>
internal static class LoopSums
{
    /// <summary>
    /// A clearance over the places that enter it; null when none does. The doubt of what was read counts with the factor of the shop's rule, which for
    /// few readings is too small: the plan is judged again as it stands. What stands on its drawing is taken at its middle, and the piece is chosen
    /// again when it is measured.
    /// </summary>
    public static PlanSum? Of(ClearanceLoop loop, string demand, ImmutableArray<PlanPlace> places, Func<int, Fit, EstimateBook> book, Policy policy)
    {
        var scale = loop.Terms.Aggregate(1L, (lcm, t) => lcm / Gcd(lcm, t.Denominator) * t.Denominator);
        var at = places.Select((p, i) => (Key: (p.Position.Id, p.Index), i)).ToDictionary(x => x.Key, x => x.i);
        var terms = loop.Terms.Where(t => t.Of is not Fixed).GroupBy(t => at.GetValueOrDefault((PositionOf(t), 1), -1)).ToImmutableArray();
        if (terms.IsEmpty || terms.Any(g => g.Key < 0))
            return null;
        var still = loop.Terms.Sum(t => t.Of is Fixed f ? t.Numerator * (scale / t.Denominator) * f.Value.Nanometres : 0);
        var window = WindowOf.Loop(loop, policy);
        return new PlanSum(
            demand,
            window.Low is Exact low ? (low.Value.Nanometres * scale) - still : long.MinValue,
            window.High is Exact high ? (high.Value.Nanometres * scale) - still : long.MaxValue,
            [.. terms.Select(g => TermOf(g.Key, [.. g], places[g.Key], scale, book))],
            FactorOf(policy.For(loop.Criticality)));
    }

    /// <summary>The positions whose parts and pieces enter a clearance, by themselves or through what is derived on them.</summary>
    public static IReadOnlySet<string> PositionsOf(ClearanceLoop loop) => loop.Terms.Where(t => t.Of is not Fixed).Select(PositionOf).ToHashSet(StringComparer.Ordinal);

    private static string PositionOf(Term term) => term.Of is OfSeries s ? s.Position : ((OfPart)term.Of).At.Position;

    private static double FactorOf(Policy policy) => policy.Decision == DecisionRule.SimpleAcceptance ? 0 : StandardNormal.Quantile(policy.Probability);

    private static PlanTerm TermOf(int place, Term[] terms, PlanPlace of, long scale, Func<int, Fit, EstimateBook> book)
    {
        var values = of.Fits.Select(f => ValueOf(terms, scale, book(place, f))).ToArray();
        return new PlanTerm(place, [.. values.Select(v => v.Amount)], [.. values.Select(v => v.Variance)]);
    }

    private static (long? Amount, double Variance) ValueOf(Term[] terms, long scale, EstimateBook book)
    {
        var (amount, variance) = (0L, 0.0);
        foreach (var term in terms)
        {
            var estimate = term.Of is OfSeries series ? PlacedPieces.At(series, book).Thickness : book.Of(((OfPart)term.Of).At);
            if (estimate.Value is not Exact { Value: var value })
                return (null, 0);
            var factor = term.Numerator * (scale / term.Denominator);
            amount += factor * value.Nanometres;
            if (estimate.Basis != EstimateBasis.Drawing)
                variance += Math.Pow(factor * estimate.StandardUncertainty * 1e9, 2);
        }

        return (amount, variance);
    }

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}
