using System.Collections.Immutable;

namespace RebuildApi.Engine.Planning.Solving;

/// <summary>
/// One option is to be taken for each choice, so that no table forbids the combination, every sum lies in its window, and the costs add up to the least.
/// Whole numbers only; nothing of a family, a unit or a shop is left in it.
/// </summary>
/// <param name="Choices">What is chosen; at least one.</param>
/// <param name="Tables">What combinations of options cost, or that they may not be.</param>
/// <param name="Sums">What adds up over the options taken.</param>
public sealed record PlanProblem(ImmutableArray<PlanChoice> Choices, ImmutableArray<PlanTable> Tables, ImmutableArray<PlanSum> Sums);

/// <summary>One thing to choose.</summary>
/// <param name="Id">Its name, for messages.</param>
/// <param name="Costs">What each option costs, not negative; at least one option.</param>
public sealed record PlanChoice(string Id, ImmutableArray<long> Costs);

/// <summary>What each combination of the options of a few choices costs.</summary>
/// <param name="Demand">The demand that it stands for; several tables may stand for one.</param>
/// <param name="Choices">Indices of different choices; at least one.</param>
/// <param name="Costs">One cost for each combination, the last choice running fastest; not negative, or <see cref="Forbidden"/>.</param>
public sealed record PlanTable(string Demand, ImmutableArray<int> Choices, ImmutableArray<long> Costs)
{
    /// <summary>The cost of what may not be.</summary>
    public const long Forbidden = long.MaxValue;
}

/// <summary>
/// Σ amounts of the options taken must lie in low + g .. high − g, ends included, where g = ⌈guard · √(variance + Σ variances)⌉: the more doubt the options
/// bring, the narrower the window. An option without an amount leaves the whole sum free.
/// </summary>
/// <param name="Demand">The demand that it stands for.</param>
/// <param name="Low">Least sum; <see cref="long.MinValue"/> when there is no least.</param>
/// <param name="High">Greatest sum; <see cref="long.MaxValue"/> when there is no greatest.</param>
/// <param name="Terms">What each choice adds; a choice stands in it once.</param>
/// <param name="Guard">How many standard deviations are held back; not negative.</param>
/// <param name="Variance">Variance that is there whatever is taken, in the square of the amounts' unit.</param>
public sealed record PlanSum(string Demand, long Low, long High, ImmutableArray<PlanTerm> Terms, double Guard = 0, double Variance = 0);

/// <summary>What one choice adds to a sum.</summary>
/// <param name="Choice">Index of the choice.</param>
/// <param name="Amounts">One for each option; none where it is not known.</param>
/// <param name="Variances">One for each option, or empty when there is no doubt.</param>
public sealed record PlanTerm(int Choice, ImmutableArray<long?> Amounts, ImmutableArray<double> Variances);
