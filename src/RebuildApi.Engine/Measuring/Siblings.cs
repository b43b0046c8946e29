namespace RebuildApi.Engine.Measuring;

/// <summary>The other readings of the same measurement.</summary>
/// <param name="Median">Their median on the scale.</param>
/// <param name="Reach">How far from it a reading may lie before it stands out.</param>
internal sealed record Siblings(double Median, double Reach)
{
    private const double MedianDeviationsAllowed = 6 * 1.4826;
    private const double StepsAllowed = 10;

    /// <summary>
    /// Six robust standard deviations (1.4826 × the median deviation is s for a normal distribution), ten instrument steps, or half the
    /// width of the limits, whichever is most: worn parts are not round. Common practice, no source.
    /// </summary>
    /// <returns>Null when there are no others.</returns>
    public static Siblings? Of(IReadOnlyCollection<double> others, double step, PlausibleBand? band)
    {
        if (others.Count == 0)
            return null;
        var median = MedianOf(others);
        var deviation = MedianOf([.. others.Select(o => Math.Abs(o - median))]);
        var limitWidth = (band?.Width ?? 0) / 3;
        return new Siblings(median, Math.Max(Math.Max(MedianDeviationsAllowed * deviation, StepsAllowed * step), limitWidth / 2));
    }

    public bool Near(double point) => Math.Abs(point - Median) <= Reach;

    private static double MedianOf(IReadOnlyCollection<double> values)
    {
        var sorted = values.Order().ToArray();
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
