using System.Collections.Immutable;

namespace RebuildApi.Engine.Statistics;

/// <summary>One chart: a centre with its limits.</summary>
/// <param name="Centre">Centre line.</param>
/// <param name="Low">Lower control limit.</param>
/// <param name="High">Upper control limit.</param>
public sealed record ChartLine(double Centre, double Low, double High)
{
    /// <summary>Whether a point lies beyond a limit.</summary>
    public bool IsBeyond(double point) => point < Low || point > High;
}

/// <summary>A pair of charts, for the level and for the spread, made from a time when the process was taken to be steady.</summary>
/// <param name="Level">Means of subgroups, or single values.</param>
/// <param name="Spread">Ranges, deviations, or moving ranges.</param>
/// <param name="Sigma">Standard deviation within subgroups that the limits rest on.</param>
/// <param name="Count">How many subgroups or values they rest on.</param>
public sealed record ControlChart(ChartLine Level, ChartLine Spread, double Sigma, int Count)
{
    private const int RunLength = 9;

    /// <summary>X̄ and R chart: σ = R̄/d2.</summary>
    /// <param name="subgroups">At least two, all of one size from 2 to 10.</param>
    /// <param name="sigmas">How many standard deviations the limits stand off; 3 is usual.</param>
    public static ControlChart MeanAndRange(ImmutableArray<ImmutableArray<double>> subgroups, double sigmas = 3)
    {
        var n = SizeOf(subgroups);
        var range = subgroups.Average(Range);
        var sigma = range / RangeFactors.Mean(n);
        return new ControlChart(LevelOf(subgroups, sigma, n, sigmas), Spaced(range, sigmas * RangeFactors.Deviation(n) * sigma), sigma, subgroups.Length);
    }

    /// <summary>X̄ and s chart: σ = s̄/c4.</summary>
    /// <param name="subgroups">At least two, all of one size of at least 2.</param>
    /// <param name="sigmas">How many standard deviations the limits stand off; 3 is usual.</param>
    public static ControlChart MeanAndDeviation(ImmutableArray<ImmutableArray<double>> subgroups, double sigmas = 3)
    {
        var n = SizeOf(subgroups);
        var deviation = subgroups.Average(g => Descriptive.Of(g).StandardDeviation);
        var c4 = RangeFactors.MeanOfDeviation(n);
        var sigma = deviation / c4;
        return new ControlChart(LevelOf(subgroups, sigma, n, sigmas), Spaced(deviation, sigmas * Math.Sqrt(1 - c4 * c4) * sigma), sigma, subgroups.Length);
    }

    /// <summary>Chart of single values with their moving ranges: σ = mean moving range/d2(2).</summary>
    /// <param name="values">At least two, in the order of time.</param>
    /// <param name="sigmas">How many standard deviations the limits stand off; 3 is usual.</param>
    public static ControlChart Individuals(ImmutableArray<double> values, double sigmas = 3)
    {
        if (values.Length < 2)
            throw new ArgumentException("A chart of single values needs at least two.", nameof(values));
        var range = values.Zip(values.Skip(1), (a, b) => Math.Abs(b - a)).Average();
        var sigma = range / RangeFactors.Mean(2);
        return new ControlChart(
            Spaced(values.Average(), sigmas * sigma, floor: false), Spaced(range, sigmas * RangeFactors.Deviation(2) * sigma), sigma, values.Length);
    }

    /// <summary>
    /// What a row of levels says: <c>beyond-limit</c> for a point beyond a limit, <c>run-on-one-side</c> for the ninth and later of a run on
    /// one side of the centre (Nelson's second test, Journal of Quality Technology 16, 1984; from memory).
    /// </summary>
    public ImmutableArray<ChartSignal> Signals(ImmutableArray<double> levels)
    {
        var signals = ImmutableArray.CreateBuilder<ChartSignal>();
        var run = 0;
        for (var i = 0; i < levels.Length; i++)
        {
            var side = Math.Sign(levels[i] - Level.Centre);
            run = side != 0 && Math.Sign(run) == side ? run + side : side;
            if (Level.IsBeyond(levels[i]))
                signals.Add(new ChartSignal(i, "beyond-limit"));
            if (Math.Abs(run) >= RunLength)
                signals.Add(new ChartSignal(i, "run-on-one-side"));
        }

        return signals.ToImmutable();
    }

    private static double Range(ImmutableArray<double> group) => group.Max() - group.Min();

    private static ChartLine LevelOf(ImmutableArray<ImmutableArray<double>> subgroups, double sigma, int n, double sigmas) =>
        Spaced(subgroups.Average(g => g.Average()), sigmas * sigma / Math.Sqrt(n), floor: false);

    private static ChartLine Spaced(double centre, double distance, bool floor = true) =>
        new(centre, floor ? Math.Max(0, centre - distance) : centre - distance, centre + distance);

    private static int SizeOf(ImmutableArray<ImmutableArray<double>> subgroups)
    {
        if (subgroups.Length < 2 || subgroups[0].Length < 2 || subgroups.Any(g => g.Length != subgroups[0].Length))
            throw new ArgumentException("A chart of subgroups needs at least two, all of one size of at least two.", nameof(subgroups));
        return subgroups[0].Length;
    }
}

/// <summary>A point that does not look like chance.</summary>
/// <param name="Index">Which, from 0.</param>
/// <param name="Code"><c>beyond-limit</c> or <c>run-on-one-side</c>.</param>
public readonly record struct ChartSignal(int Index, string Code);
