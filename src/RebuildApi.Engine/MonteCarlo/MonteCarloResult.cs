namespace RebuildApi.Engine.MonteCarlo;

/// <summary>How a propagation is run.</summary>
/// <param name="Seed">The same seed gives the same result, whatever the number of threads.</param>
/// <param name="Coverage">Coverage probability of the intervals, 0..1 excluded.</param>
/// <param name="Digits">Significant digits of the standard uncertainty that must be sound: 1 to 4; more than 2 seldom mean anything.</param>
/// <param name="MaximumTrials">Where to stop when they do not come.</param>
/// <param name="Threads">How many threads may work on it.</param>
public sealed record MonteCarloOptions(ulong Seed = 1, double Coverage = 0.95, int Digits = 2, int MaximumTrials = 1 << 22, int Threads = 1);

/// <summary>An interval with the coverage asked for.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct CoverageInterval(double Low, double High)
{
    /// <summary>High − Low.</summary>
    public double Width => High - Low;
}

/// <summary>What a propagation found.</summary>
/// <param name="Mean">Mean of the output.</param>
/// <param name="StandardUncertainty">Its standard deviation.</param>
/// <param name="Symmetric">Interval with equal chances on both sides.</param>
/// <param name="Shortest">Shortest interval. Of a flat-topped density its ends are ill-determined while its width is not.</param>
/// <param name="Trials">Trials that were run.</param>
/// <param name="Tolerance">Numerical tolerance δ that the digits asked for allow (JCGM 101:2008, 7.9.2).</param>
/// <param name="IsStable">Whether mean, uncertainty and ends were found within the tolerance.</param>
/// <param name="Sorted">The output, smallest first.</param>
public sealed record MonteCarloResult(
    double Mean,
    double StandardUncertainty,
    CoverageInterval Symmetric,
    CoverageInterval Shortest,
    int Trials,
    double Tolerance,
    bool IsStable,
    ReadOnlyMemory<double> Sorted)
{
    /// <summary>Share of the trials in a window, ends included.</summary>
    public double ChanceWithin(double? low, double? high)
    {
        var values = Sorted.Span;
        var below = low is { } l ? CountBelow(values, l, orEqual: false) : 0;
        var upTo = high is { } h ? CountBelow(values, h, orEqual: true) : values.Length;
        return Math.Max(0, upTo - below) / (double)values.Length;
    }

    private static int CountBelow(ReadOnlySpan<double> sorted, double limit, bool orEqual)
    {
        var (low, high) = (0, sorted.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (sorted[middle] < limit || (orEqual && sorted[middle] == limit))
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}
