using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.MonteCarlo;

namespace RebuildApi.Engine.Measuring;

/// <summary>A characteristic that follows from others: u² = Σ (∂f/∂x_i · u_i)², inputs taken as independent (JCGM 100:2008, 5.1.2).</summary>
internal static class DerivedEstimate
{
    private const int MostTrials = 1 << 20;

    private static readonly Estimate Unknown = new(null, 0, null, null, null, EstimateBasis.None, []);

    /// <summary>A sum of terms, exact in whole nanometres for lengths.</summary>
    /// <param name="linear">The sum.</param>
    /// <param name="scale">The scale of the result.</param>
    /// <param name="of">What is known of each address.</param>
    public static Estimate Of(Linear linear, Scale scale, Func<Address, Estimate> of)
    {
        var parts = linear.Terms.Select(term => (Term: term, Factor: term.Numerator / (double)term.Denominator, Input: InputOf(term, of))).ToArray();
        if (parts.Any(p => p.Input.Basis == EstimateBasis.None))
            return Unknown;
        var lines = parts.Select(p => new Contribution(NameOf(p.Term), Math.Abs(p.Factor) * p.Input.StandardUncertainty, p.Input.DegreesOfFreedom, 0));
        var value = Sum(parts.Select(p => (p.Factor, scale.Of(p.Input.Value))));
        return Budget.Estimate(
            Quantity(scale, value),
            BasisOf(parts.Select(p => p.Input)),
            lines,
            Quantity(scale, End(parts.Select(p => (p.Factor, p.Input)), scale, low: true)),
            Quantity(scale, End(parts.Select(p => (p.Factor, p.Input)), scale, low: false)));
    }

    /// <summary>A named function, carried through numerically; by Monte Carlo where a straight line through it does not do.</summary>
    public static Derived Of(Named named, Scale scale, Func<Address, Estimate> of)
    {
        if (NamedFunctions.Find(named.Function) is not { } function || function.Arguments.Any(a => !named.Arguments.ContainsKey(a)))
            return Unknown;
        var inputs = function.Arguments.Select(a => of(named.Arguments[a])).ToArray();
        if (inputs.Any(i => i.Value is null))
            return Unknown;
        var propagated = Propagation.Through(function.Value, [.. inputs.Select((input, i) => new FormulaInput(
            named.Arguments[function.Arguments[i]].ToString(), input.Value!.InSi, input.StandardUncertainty, input.DegreesOfFreedom))]);
        if (!double.IsFinite(propagated.Value) || !double.IsFinite(propagated.FirstOrder) || !double.IsFinite(propagated.SecondOrder))
            return Unknown;
        if (!propagated.FirstOrderSuffices && Trials(function, inputs) is { } trials)
            return new Derived(Budget.Estimate(scale.FromSi(trials.Mean), BasisOf(inputs), Scaled(propagated, trials)) with { DegreesOfFreedom = null }, trials);
        return Budget.Estimate(scale.FromSi(propagated.Value), BasisOf(inputs), [.. propagated.Budget, .. Bent(propagated)]);
    }

    /// <summary>As many trials as two digits of the uncertainty need; none where they do not settle, as with the mean of two readings.</summary>
    private static MonteCarloResult? Trials(NamedFunction function, Estimate[] inputs)
    {
        var result = MonteCarloPropagation.Run(Models.Of(function.Value), [.. inputs.Select(EstimateInput.Of)], new MonteCarloOptions(MaximumTrials: MostTrials));
        return result.IsStable && double.IsFinite(result.StandardUncertainty) ? result : null;
    }

    /// <summary>The first-order lines, and what the trials found beyond them; all drawn in alike where they found less.</summary>
    private static IEnumerable<Contribution> Scaled(Propagated propagated, MonteCarloResult trials)
    {
        var (first, found) = (propagated.FirstOrder, trials.StandardUncertainty);
        return found >= first
            ? [.. propagated.Budget, new Contribution("monte-carlo", Math.Sqrt(found * found - first * first), null, 0)]
            : propagated.Budget.Select(l => l with { StandardUncertainty = l.StandardUncertainty * found / first });
    }

    /// <summary>What a straight line through the formula leaves out, where that matters.</summary>
    private static IEnumerable<Contribution> Bent(Propagated propagated)
    {
        if (!propagated.FirstOrderSuffices)
            yield return new Contribution("second-order", Math.Sqrt(propagated.SecondOrder * propagated.SecondOrder - propagated.FirstOrder * propagated.FirstOrder), null, 0);
    }

    private static Estimate InputOf(Term term, Func<Address, Estimate> of) => term.Of switch
    {
        OfPart part => of(part.At),
        Fixed fixedLength => new Estimate(new Exact(fixedLength.Value), 0, null, null, null, EstimateBasis.Measured, []),
        _ => Unknown,
    };

    private static string NameOf(Term term) => term.Of is OfPart part ? part.At.ToString() : "fixed";

    /// <summary>A drawing value anywhere below makes the whole rest on the drawing.</summary>
    private static EstimateBasis BasisOf(IEnumerable<Estimate> inputs) =>
        inputs.Any(i => i.Basis == EstimateBasis.Drawing) ? EstimateBasis.Drawing : EstimateBasis.Derived;

    /// <summary>An end of the sum; known only where each input is a value or has the end that matters.</summary>
    private static double? End(IEnumerable<(double Factor, Estimate Input)> parts, Scale scale, bool low)
    {
        var all = parts.ToArray();
        return all.All(p => p.Input is { Value: not null, Low: null, High: null })
            ? null
            : Sum(all.Select(p => (p.Factor, scale.Of((p.Factor > 0 == low ? p.Input.Low : p.Input.High) ?? p.Input.Value))));
    }

    private static double? Sum(IEnumerable<(double Factor, double? Point)> parts) =>
        parts.Aggregate((double?)0, (sum, p) => sum + p.Factor * p.Point);

    private static Quantity? Quantity(Scale scale, double? point) => point is { } p ? scale.Quantity(p) : null;
}
