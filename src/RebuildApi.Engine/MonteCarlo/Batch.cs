namespace RebuildApi.Engine.MonteCarlo;

/// <summary>Some trials and what they say.</summary>
/// <param name="Sorted">Their results, smallest first.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="StandardUncertainty">Their standard deviation.</param>
/// <param name="Symmetric">Their probabilistically symmetric interval.</param>
internal sealed record Batch(double[] Sorted, double Mean, double StandardUncertainty, CoverageInterval Symmetric)
{
    public static Batch Of(double[] sorted, double coverage)
    {
        var mean = sorted.Average();
        var squares = 0.0;
        foreach (var x in sorted)
            squares += (x - mean) * (x - mean);
        return new Batch(sorted, mean, Math.Sqrt(squares / (sorted.Length - 1)), Coverage.Symmetric(sorted, coverage));
    }
}

/// <summary>Coverage intervals of sorted trials (JCGM 101:2008, 7.7).</summary>
internal static class Coverage
{
    public static CoverageInterval Symmetric(double[] sorted, double coverage)
    {
        var span = Span(sorted, coverage);
        var skipped = (sorted.Length - span) / 2;
        return new CoverageInterval(sorted[skipped], sorted[Math.Min(skipped + span, sorted.Length - 1)]);
    }

    public static CoverageInterval Shortest(double[] sorted, double coverage)
    {
        var span = Span(sorted, coverage);
        var best = 0;
        for (var i = 1; i + span < sorted.Length; i++)
        {
            if (sorted[i + span] - sorted[i] < sorted[best + span] - sorted[best])
                best = i;
        }

        return new CoverageInterval(sorted[best], sorted[best + span]);
    }

    private static int Span(double[] sorted, double coverage) =>
        Math.Min(sorted.Length - 1, (int)Math.Round(coverage * sorted.Length, MidpointRounding.AwayFromZero));
}

/// <summary>Whether batches agree well enough (JCGM 101:2008, 7.9.4).</summary>
/// <param name="Tolerance">δ: half a unit of the last digit of the standard uncertainty that is asked for.</param>
/// <param name="IsStable">Whether twice the standard deviation of each average stays below it.</param>
internal sealed record Stability(double Tolerance, bool IsStable)
{
    public static Stability Of(IReadOnlyCollection<Batch> batches, int digits)
    {
        var uncertainty = batches.Average(b => b.StandardUncertainty);
        if (uncertainty == 0)
            return new Stability(0, true);
        var tolerance = 0.5 * Math.Pow(10, Math.Floor(Math.Log10(uncertainty)) - (digits - 1));
        var isStable = new Func<Batch, double>[] { b => b.Mean, b => b.StandardUncertainty, b => b.Symmetric.Low, b => b.Symmetric.High }
            .All(of => 2 * DeviationOfAverage([.. batches.Select(of)]) < tolerance);
        return new Stability(tolerance, isStable);
    }

    private static double DeviationOfAverage(double[] values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length * (values.Length - 1.0)));
    }
}
