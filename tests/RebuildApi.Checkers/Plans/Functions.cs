using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Plans;

/// <summary>The named functions of derived characteristics, worked out again; uncertainty by the slope on either side of the values (JCGM 100:2008, 5.1.3).</summary>
internal static class Functions
{
    private static readonly Dictionary<string, (string[] Arguments, Func<double[], double> Value)> s_all = new(StringComparer.Ordinal)
    {
        ["flank-angle-from-two-depths"] = (["offset-shallow", "offset-deep", "depth-shallow", "depth-deep"], a => Math.Atan2(a[1] - a[0], a[3] - a[2])),
        ["cone-half-angle-from-two-diameters"] = (["large-diameter", "small-diameter", "plane-distance"], a => Math.Atan2((a[0] - a[1]) / 2, a[2])),
        ["ratio"] = (["numerator", "denominator"], a => a[0] / a[1]),
    };

    /// <summary>The value on its scale; none when an input is not known.</summary>
    /// <param name="named">Which function of what.</param>
    /// <param name="of">An input with the SI of one step of its scale.</param>
    /// <param name="si">SI of one step of the result's scale.</param>
    public static CheckedValue? Of(Named named, Func<Address, (CheckedValue Value, double Si)?> of, double si)
    {
        if (!s_all.TryGetValue(named.Function, out var function))
            return null;
        var inputs = function.Arguments.Select(a => of(named.Arguments[a])).ToArray();
        if (inputs.Any(i => i?.Value.Point is null))
            return null;
        var points = inputs.Select(i => i!.Value.Value.Point!.Value * i.Value.Si).ToArray();
        var lines = inputs.Select((x, i) => (Slope(function.Value, points, i, x!.Value.Value.U * x.Value.Si) / si, x.Value.Value.Freedom));
        var from = inputs.Any(i => i!.Value.Value.From == EstimateBasis.Drawing) ? EstimateBasis.Drawing : EstimateBasis.Derived;
        return CheckedValue.Of(function.Value(points) / si, from, lines);
    }

    private static double Slope(Func<double[], double> function, double[] points, int at, double u) =>
        Math.Abs(function(Moved(points, at, u)) - function(Moved(points, at, -u))) / 2;

    private static double[] Moved(double[] points, int at, double by) => [.. points.Select((p, i) => i == at ? p + by : p)];
}
