using System.Numerics;
using RebuildApi.Contracts;

namespace RebuildApi.Checkers;

/// <summary>A choice problem as the checker sees it: written down again, sharing no type and no arithmetic with the solver it checks.</summary>
/// <param name="Loops">The clearances.</param>
/// <param name="Choices">The options of each choice.</param>
public sealed record CheckedProblem(IReadOnlyList<CheckedLoop> Loops, IReadOnlyList<IReadOnlyList<CheckedOption>> Choices)
{
    /// <summary>What one option of each choice is ranked by, in exact fractions.</summary>
    public CheckedRank RankOf(IReadOnlyList<int> picks)
    {
        var options = picks.Select((p, c) => Choices[c][p]).ToArray();
        var gaps = Loops.Select(l => l.Terms.Aggregate(Fraction.Of(l.Without.Nanometres), (sum, t) => sum + t.Coefficient * options[t.Choice].Amount.Nanometres)).ToArray();
        return new CheckedRank(
            Loops.Zip(gaps).Min(x => x.First.MarginOf(x.Second)),
            Loops.Zip(gaps).Aggregate(Fraction.Of(0), (sum, x) => sum + (x.Second - Fraction.Of(x.First.Target.Nanometres)).Magnitude),
            options.Sum(o => o.Pieces),
            options.Sum(o => o.Cost),
            options.Sum(o => o.Removed.Nanometres));
    }
}

/// <summary>One clearance.</summary>
public sealed record CheckedLoop(Length Without, long UncertaintyNm, Length? Low, Length? High, Length Target, IReadOnlyList<(int Choice, Fraction Coefficient)> Terms)
{
    /// <summary>Hundredths of the standard uncertainty to the nearest end, rounded down.</summary>
    public BigInteger MarginOf(Fraction gap)
    {
        var slacks = new List<Fraction>();
        if (Low is { } low)
            slacks.Add(gap - Fraction.Of(low.Nanometres));
        if (High is { } high)
            slacks.Add(Fraction.Of(high.Nanometres) - gap);
        return slacks.Min(s => (s * 100).FloorOver(Math.Max(1, UncertaintyNm)));
    }
}

/// <summary>One option of a choice.</summary>
public sealed record CheckedOption(Length Amount, long Pieces, long Cost, Length Removed);
