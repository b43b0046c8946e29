using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>
/// What an uncertainty is made of. Lines are independent of one another and carry their sensitivities:
/// u² = Σ u_i², ν_eff = u⁴ / Σ (u_i⁴/ν_i) (JCGM 100:2008, 5.1.2 and G.4.1, Welch–Satterthwaite).
/// </summary>
public static class Budget
{
    /// <summary>u, the combined standard uncertainty, in the unit of the lines.</summary>
    public static double Combined(IEnumerable<Contribution> lines) => Math.Sqrt(lines.Sum(l => l.StandardUncertainty * l.StandardUncertainty));

    /// <summary>ν_eff; null when it is infinite.</summary>
    public static double? EffectiveDegreesOfFreedom(ImmutableArray<Contribution> lines)
    {
        var combined = Combined(lines);
        if (combined == 0)
            return null;
        var sum = lines.Sum(l => l.DegreesOfFreedom is { } nu ? Math.Pow(l.StandardUncertainty / combined, 4) / nu : 0);
        return sum == 0 ? null : 1 / sum;
    }

    /// <summary>The lines with their shares of the variance filled in; lines of no weight are left out.</summary>
    public static ImmutableArray<Contribution> Shared(IEnumerable<Contribution> lines)
    {
        var kept = lines.Where(l => l.StandardUncertainty > 0).ToArray();
        var largest = kept.Length == 0 ? 1 : kept.Max(l => l.StandardUncertainty);
        var total = kept.Sum(l => Square(l.StandardUncertainty / largest));
        return [.. kept.Select(l => l with { Share = Square(l.StandardUncertainty / largest) / total })];
    }

    /// <summary>An estimate with the uncertainty that the lines make.</summary>
    internal static Estimate Estimate(Quantity? value, EstimateBasis basis, IEnumerable<Contribution> lines, Quantity? low = null, Quantity? high = null)
    {
        var budget = Shared(lines);
        return new Estimate(value, Combined(budget), EffectiveDegreesOfFreedom(budget), low, high, basis, budget);
    }

    private static double Square(double x) => x * x;
}
