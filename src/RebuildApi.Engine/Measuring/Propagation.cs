using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>One input of a formula. Plain numbers: the caller keeps the unit.</summary>
/// <param name="Name">What it is called in the budget.</param>
/// <param name="Value">Best estimate.</param>
/// <param name="StandardUncertainty">Standard uncertainty.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom; null for infinite.</param>
public sealed record FormulaInput(string Name, double Value, double StandardUncertainty, double? DegreesOfFreedom);

/// <summary>An uncertainty carried through a formula.</summary>
/// <param name="Value">The formula at the best estimates.</param>
/// <param name="FirstOrder">u to first order.</param>
/// <param name="SecondOrder">u with the second-order terms.</param>
/// <param name="DegreesOfFreedom">ν_eff of the first-order budget; null for infinite.</param>
/// <param name="Budget">The first-order lines with their shares.</param>
/// <param name="FirstOrderSuffices">Whether the second-order terms add less than a twentieth to u. When they do not, let Monte Carlo decide.</param>
public sealed record Propagated(
    double Value,
    double FirstOrder,
    double SecondOrder,
    double? DegreesOfFreedom,
    ImmutableArray<Contribution> Budget,
    bool FirstOrderSuffices);

/// <summary>
/// Carries uncertainties through any formula with numerical derivatives taken over one standard uncertainty either way (JCGM 100:2008,
/// 5.1.2, and 5.1.3 note 2). Inputs are independent.
/// </summary>
public static class Propagation
{
    private const double NegligibleGrowth = 1.05;

    /// <summary>First- and second-order uncertainty of a formula.</summary>
    /// <param name="formula">The formula; it must not keep the array that it is given.</param>
    /// <param name="inputs">Its inputs, in the order it takes them.</param>
    public static Propagated Through(Func<double[], double> formula, ImmutableArray<FormulaInput> inputs)
    {
        var steps = new Steps(formula, inputs);
        var changes = inputs.Select((_, i) => steps.First(i)).ToArray();
        var budget = Budget.Shared(inputs.Select((input, i) => new Contribution(input.Name, Math.Abs(changes[i]), input.DegreesOfFreedom, 0)));
        var first = Budget.Combined(budget);

        // Σᵢ Σⱼ [½ (∂²f/∂xᵢ∂xⱼ)² + ∂f/∂xᵢ · ∂³f/∂xᵢ∂xⱼ²] uᵢ² uⱼ²
        var more = 0.0;
        for (var i = 0; i < inputs.Length; i++)
        {
            for (var j = 0; j < inputs.Length; j++)
                more += 0.5 * Square(steps.Second(i, j)) + changes[i] * steps.Third(i, j);
        }

        var second = Math.Sqrt(Math.Max(0, first * first + more));
        return new Propagated(
            formula(steps.Centre()), first, second, Budget.EffectiveDegreesOfFreedom(budget), budget, second <= NegligibleGrowth * first);
    }

    private static double Square(double x) => x * x;

    /// <summary>Differences over steps of one standard uncertainty: derivatives already multiplied by the uncertainties.</summary>
    private sealed class Steps(Func<double[], double> formula, ImmutableArray<FormulaInput> inputs)
    {
        public double[] Centre() => [.. inputs.Select(x => x.Value)];

        public double First(int i) => (At((i, 1)) - At((i, -1))) / 2;

        public double Second(int i, int j) => i == j
            ? At((i, 1)) - 2 * At() + At((i, -1))
            : (At((i, 1), (j, 1)) - At((i, 1), (j, -1)) - At((i, -1), (j, 1)) + At((i, -1), (j, -1))) / 4;

        public double Third(int i, int j) => i == j
            ? (At((i, 2)) - 2 * At((i, 1)) + 2 * At((i, -1)) - At((i, -2))) / 2
            : (Curvature(i, 1, j) - Curvature(i, -1, j)) / 2;

        private double Curvature(int i, int side, int j) => At((i, side), (j, 1)) - 2 * At((i, side)) + At((i, side), (j, -1));

        private double At(params (int Index, int Steps)[] moves)
        {
            var at = Centre();
            foreach (var (index, steps) in moves)
                at[index] += steps * inputs[index].StandardUncertainty;
            return formula(at);
        }
    }
}
