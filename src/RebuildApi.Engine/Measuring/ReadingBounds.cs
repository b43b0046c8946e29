using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>What bounds say of the statistic that a characteristic reports.</summary>
internal static class ReadingBounds
{
    /// <summary>
    /// The bounds of a statistic. Readings at one place are of one length, so their intervals intersect; the smallest of several places lies
    /// between the smallest of their lower and the smallest of their upper ends, and so on.
    /// </summary>
    /// <returns>Ends on the scale; none where nothing is known.</returns>
    public static (double? Low, double? High) Of(ReadingSet readings, Statistic report)
    {
        if (readings.Bounds.IsEmpty)
            return (null, null);
        var places = readings.Bounds.GroupBy(b => b.Place).Select(Intersection)
            .Concat(readings.Values.Select(v => (Low: v.Point, High: v.Point)))
            .ToArray();
        var (low, high) = report switch
        {
            Statistic.Min => (places.Min(p => p.Low), places.Min(p => p.High)),
            Statistic.Max => (places.Max(p => p.Low), places.Max(p => p.High)),
            Statistic.Spread => (Math.Max(0, places.Max(p => p.Low) - places.Min(p => p.High)), places.Max(p => p.High) - places.Min(p => p.Low)),
            _ => (places.Average(p => p.Low), places.Average(p => p.High)),
        };
        return (Finite(low), Finite(high));
    }

    /// <summary>Bounds that contradict one another bound nothing between them: their hull stands.</summary>
    private static (double Low, double High) Intersection(IEnumerable<ReadBound> bounds)
    {
        var low = bounds.Max(b => b.Low ?? double.NegativeInfinity);
        var high = bounds.Min(b => b.High ?? double.PositiveInfinity);
        return low <= high ? (low, high) : (high, low);
    }

    private static double? Finite(double end) => double.IsFinite(end) ? end : null;
}
