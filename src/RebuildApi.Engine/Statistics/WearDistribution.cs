using System.Collections.Immutable;

namespace RebuildApi.Engine.Statistics;

/// <summary>How worn the incoming parts of one sort are.</summary>
/// <param name="Summary">Count, mean, deviation.</param>
/// <param name="Quantiles">Probability to value, at 5, 25, 50, 75 and 95 %.</param>
/// <param name="BeyondLimit">Share beyond the limits, with its exact interval; none when there are no limits.</param>
public sealed record WearDistribution(Descriptive Summary, ImmutableSortedDictionary<double, double> Quantiles, Share? BeyondLimit)
{
    private static readonly double[] Asked = [0.05, 0.25, 0.5, 0.75, 0.95];

    /// <summary>Describes readings of incoming parts.</summary>
    /// <param name="values">At least one.</param>
    /// <param name="low">Low limit, or none.</param>
    /// <param name="high">High limit, or none.</param>
    public static WearDistribution Of(ImmutableArray<double> values, double? low, double? high)
    {
        var sorted = values.Sort();
        var beyond = low is null && high is null ? null : Share.Counted(values.Count(v => v < low || v > high), values.Length);
        return new WearDistribution(Descriptive.Of(values), Asked.ToImmutableSortedDictionary(p => p, p => Quantile(sorted, p)), beyond);
    }

    /// <summary>Linear between order statistics at (n − 1)p (Hyndman and Fan, The American Statistician 50, 1996, type 7).</summary>
    private static double Quantile(ImmutableArray<double> sorted, double probability)
    {
        var at = (sorted.Length - 1) * probability;
        var below = (int)Math.Floor(at);
        var above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
    }
}
