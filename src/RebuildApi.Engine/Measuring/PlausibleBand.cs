using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>Where a value may well lie, worn or new, on a scale. Common practice, no source: the limits, and as much again on either side.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
internal sealed record PlausibleBand(double Low, double High)
{
    private const double ShareOfSingleEnd = 0.25;

    /// <summary>The band around all limits that are known; null when there are none.</summary>
    public static PlausibleBand? Of(Scale scale, params Limits?[] limits)
    {
        var ends = limits.SelectMany(l => new[] { scale.Of(l?.Low), scale.Of(l?.High) }).OfType<double>().ToArray();
        if (ends.Length == 0)
            return null;
        var (low, high) = (ends.Min(), ends.Max());
        var beyond = high > low ? high - low : ShareOfSingleEnd * Math.Abs(high);
        return beyond > 0 ? new PlausibleBand(low - beyond, high + beyond) : null;
    }

    public bool Contains(double point) => point >= Low && point <= High;

    public double Width => High - Low;

    public double Middle => Low + Width / 2;
}
