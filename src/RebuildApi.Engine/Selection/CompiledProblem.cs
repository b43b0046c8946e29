using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Selection;

/// <summary>A problem in whole numbers: every length times the common denominator of the coefficients, choices and loops by index.</summary>
internal sealed class CompiledProblem
{
    /// <summary>Checks a problem and turns it into whole numbers.</summary>
    /// <exception cref="ArgumentException">A list is empty, an id is missing or double, a coefficient or an uncertainty is no such thing.</exception>
    public CompiledProblem(SelectionProblem problem)
    {
        SelectionCheck.Require(problem);
        Problem = problem;
        Scale = problem.Loops.SelectMany(l => l.Terms).Aggregate(1L, (lcm, t) => lcm / Gcd(lcm, t.Denominator) * t.Denominator);
        var index = problem.Choices.Select((c, i) => (c.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        var dearest = problem.Choices.SelectMany(c => c.Options).Max(o => o.Cost) ?? 0;
        Options = [.. problem.Choices.Select(c => c.Options.Select(o => Compile(o, dearest + 1)).ToArray())];
        Loops = [.. problem.Loops.Select(l => CompiledLoop.Of(l, Scale, index))];
    }

    public SelectionProblem Problem { get; }

    /// <summary>The common denominator of all coefficients.</summary>
    public long Scale { get; }

    /// <summary>By choice, then by option.</summary>
    public CompiledOption[][] Options { get; }

    public CompiledLoop[] Loops { get; }

    /// <summary>Every option of every choice.</summary>
    public int[][] AllAllowed() => [.. Options.Select(o => Enumerable.Range(0, o.Length).ToArray())];

    /// <summary>The full answer for one option of each choice.</summary>
    public SelectionSolution Solution(int[] picks)
    {
        var gaps = Loops.Select(l => l.GapOf(picks, Options)).ToArray();
        var margins = gaps.Select((g, i) => Loops[i].Margin(g)).ToArray();
        var chosen = picks.Select((p, c) => Options[c][p]).ToArray();
        var rank = new SelectionRank(
            margins.Min(),
            gaps.Select((g, i) => Loops[i].Distance(g)).Sum(),
            chosen.Sum(o => o.Side.Pieces),
            chosen.Sum(o => o.Side.Cost),
            chosen.Sum(o => o.Side.Removed));
        return new SelectionSolution(
            [.. picks.Select((p, c) => new SelectionPick(Problem.Choices[c].Id, Problem.Choices[c].Options[p]))],
            [.. Loops.Select((l, i) => new SelectionGap(Problem.Loops[i].Id, Unscaled(gaps[i]), margins[i]))],
            rank);
    }

    private Length Unscaled(long scaled) =>
        new((long)decimal.Round((decimal)scaled / Scale, MidpointRounding.AwayFromZero));

    private static CompiledOption Compile(SelectionOption option, long unknownCost) =>
        new(option.Amount.Nanometres, new Side(option.Members.Length, option.Cost ?? (option.Members.IsEmpty ? 0 : unknownCost), option.Removed.Nanometres));

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}

/// <summary>What an option costs besides what it does to gaps.</summary>
internal readonly record struct Side(long Pieces, long Cost, long Removed) : IComparable<Side>
{
    public static Side operator +(Side a, Side b) => new(a.Pieces + b.Pieces, a.Cost + b.Cost, a.Removed + b.Removed);

    public int CompareTo(Side other) => (Pieces, Cost, Removed).CompareTo((other.Pieces, other.Cost, other.Removed));
}

/// <summary>One option in whole nanometres.</summary>
internal readonly record struct CompiledOption(long Amount, Side Side);

/// <summary>One clearance in whole numbers, scaled.</summary>
/// <param name="Without">Gap before anything is chosen.</param>
/// <param name="Low">Guarded low end; <see cref="long.MinValue"/> when there is none.</param>
/// <param name="High">Guarded high end; <see cref="long.MaxValue"/> when there is none.</param>
/// <param name="Target">Wanted gap.</param>
/// <param name="Uncertainty">Standard uncertainty, at least one nanometre.</param>
/// <param name="Choices">Indices of the choices that enter it.</param>
/// <param name="Coefficients">Their whole coefficients.</param>
internal sealed record CompiledLoop(long Without, long Low, long High, long Target, long Uncertainty, int[] Choices, long[] Coefficients)
{
    /// <summary>Parts of a standard uncertainty that margins are counted in.</summary>
    private const long Parts = 100;

    public static CompiledLoop Of(SelectionLoop loop, long scale, IReadOnlyDictionary<string, int> index)
    {
        var terms = loop.Terms.GroupBy(t => index[t.Choice]).OrderBy(g => g.Key).ToArray();
        return new CompiledLoop(
            loop.Without.Nanometres * scale,
            loop.GuardedLow is { } low ? low.Nanometres * scale : long.MinValue,
            loop.GuardedHigh is { } high ? high.Nanometres * scale : long.MaxValue,
            loop.Target.Nanometres * scale,
            Math.Max(1, Length.NearestToMetres(loop.StandardUncertainty).Nanometres) * scale,
            [.. terms.Select(g => g.Key)],
            [.. terms.Select(g => g.Sum(t => t.Numerator * (scale / t.Denominator)))]);
    }

    public long Distance(long gap) => Math.Abs(gap - Target);

    /// <summary>Margin in hundredths of the standard uncertainty, rounded down: ⌊100 · slack / u⌋.</summary>
    public long Margin(long gap)
    {
        var slack = Slack(gap);
        var (whole, rest) = Math.DivRem(Parts * slack, Uncertainty);
        return rest < 0 ? whole - 1 : whole;
    }

    /// <summary>The gaps whose margin is at least so much; upside down when there are none.</summary>
    public (long Low, long High) GapsOfMargin(long margin)
    {
        var (whole, rest) = Math.DivRem(margin * Uncertainty, Parts);
        var slack = rest > 0 ? whole + 1 : whole;
        return (Low == long.MinValue ? Low : Low + slack, High == long.MaxValue ? High : High - slack);
    }

    public long GapOf(int[] picks, CompiledOption[][] options)
    {
        var gap = Without;
        for (var t = 0; t < Choices.Length; t++)
            gap += Coefficients[t] * options[Choices[t]][picks[Choices[t]]].Amount;
        return gap;
    }

    /// <summary>Distance to the nearest guarded end, negative outside.</summary>
    private long Slack(long gap) => (Low, High) switch
    {
        (long.MinValue, _) => High - gap,
        (_, long.MaxValue) => gap - Low,
        _ => Math.Min(gap - Low, High - gap),
    };

    /// <summary>The gap with the largest margin: the middle of the guarded window, or its far open side.</summary>
    public long Peak => (Low, High) switch
    {
        (long.MinValue, _) => long.MinValue,
        (_, long.MaxValue) => long.MaxValue,
        _ => Low + ((High - Low) / 2),
    };
}
