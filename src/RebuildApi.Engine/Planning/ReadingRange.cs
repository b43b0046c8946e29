namespace RebuildApi.Engine.Planning;

/// <summary>
/// The widest run of whole numbers for which something holds, sought from a few points: between a point for which it holds and its neighbour for which it does
/// not, the edge is halved down to one.
/// </summary>
/// <param name="holds">Whether it holds; asked once for each number.</param>
public sealed class ReadingRange(Func<long, bool> holds)
{
    private const int Points = 9;
    private const int MostSteps = 12;

    private readonly Dictionary<long, bool> _known = [];

    /// <summary>The ends, both of which hold, while what is beside them does not; null when no point holds, or an edge was not found.</summary>
    public (long Low, long High)? In(long low, long high)
    {
        var points = Enumerable.Range(0, Points).Select(i => low + ((high - low) * i / (Points - 1))).Distinct().ToArray();
        var runs = Runs(points).ToArray();
        if (runs.Length == 0)
            return null;
        var (first, last) = runs.MaxBy(r => points[r.Last] - points[r.First]);
        return (Edge(points[first], first == 0 ? null : points[first - 1], -1), Edge(points[last], last == points.Length - 1 ? null : points[last + 1], 1)) is (long from, long to)
            ? (from, to)
            : null;
    }

    private IEnumerable<(int First, int Last)> Runs(long[] points)
    {
        var first = -1;
        for (var i = 0; i <= points.Length; i++)
        {
            var isIn = i < points.Length && Holds(points[i]);
            if (isIn && first < 0)
                first = i;
            if (!isIn && first >= 0)
            {
                yield return (first, i - 1);
                first = -1;
            }
        }
    }

    /// <summary>The last number that holds on the way from one that does to one that does not; where none is known, it is sought outwards in growing steps.</summary>
    private long? Edge(long inside, long? outside, int way)
    {
        for (var step = 0; outside is null; step++)
        {
            if (step == MostSteps)
                return null;
            var next = inside + (way << step);
            if (Holds(next))
                inside = next;
            else
                outside = next;
        }

        while (Math.Abs(outside.Value - inside) > 1)
        {
            var middle = inside + ((outside.Value - inside) / 2);
            if (Holds(middle))
                inside = middle;
            else
                outside = middle;
        }

        return inside;
    }

    private bool Holds(long number) => _known.TryGetValue(number, out var known) ? known : _known[number] = holds(number);
}
