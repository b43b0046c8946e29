using System.Collections.Immutable;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>
/// An effect that any of its causes brings by itself, each failing independently of the others, and that also comes with none of them (the leak):
/// P(effect | causes) = 1 - (1 - leak) Π (1 - p_i) over the causes that are there (J. Pearl, Probabilistic Reasoning in Intelligent Systems, 1988, 4.3.2).
/// </summary>
public static class NoisyOr
{
    /// <summary>How likely the effect is.</summary>
    /// <param name="leak">How likely it comes with none of the causes.</param>
    /// <param name="present">For each cause that is there, how likely it brings the effect.</param>
    public static double Effect(double leak, IEnumerable<double> present) => 1 - present.Aggregate(1 - leak, (fails, p) => fails * (1 - p));

    /// <summary>The whole table of an effect.</summary>
    /// <param name="effect">The variable of the effect.</param>
    /// <param name="leak">How likely it comes with none of the causes.</param>
    /// <param name="causes">The variables of the causes.</param>
    /// <param name="strengths">How likely each brings the effect.</param>
    public static Factor Table(int effect, double leak, ImmutableArray<int> causes, ImmutableArray<double> strengths) => Factor.Given(
        effect,
        causes,
        [.. Enumerable.Range(0, 1 << causes.Length).Select(state => Effect(leak, strengths.Where((_, i) => ((state >> i) & 1) == 1)))]);

    /// <summary>
    /// The same with the effect seen, as a product of small tables instead of one large one: not seen is (1 - leak) Π (1 - p_i)^c_i as it stands; seen is
    /// 1 minus that, which a helping variable sums: y = no gives 1, y = yes gives -(1 - leak) Π (1 - p_i)^c_i (F. J. Díez and S. F. Galán, "Efficient
    /// computation for the noisy MAX", International Journal of Intelligent Systems 18, 2003). The leak's table comes first, then one for each cause.
    /// </summary>
    /// <param name="seen">Whether the effect was seen.</param>
    /// <param name="helper">A variable of its own.</param>
    /// <param name="leak">How likely it comes with none of the causes.</param>
    /// <param name="causes">The variables of the causes.</param>
    /// <param name="strengths">How likely each brings the effect.</param>
    public static ImmutableArray<Factor> Parts(bool seen, int helper, double leak, ImmutableArray<int> causes, ImmutableArray<double> strengths) => seen
        ? [new Factor([helper], [1, leak - 1]), .. causes.Select((c, i) => new Factor([helper, c], [1, 1, 1, 1 - strengths[i]]))]
        : [new Factor([], [1 - leak]), .. causes.Select((c, i) => new Factor([c], [1, 1 - strengths[i]]))];
}
