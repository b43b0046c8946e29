using System.Collections.Frozen;

namespace RebuildApi.Engine.Measuring;

/// <summary>The functions that a derived characteristic may name. Arguments and results are in SI.</summary>
public static class NamedFunctions
{
    private static readonly FrozenDictionary<string, NamedFunction> All = new[]
    {
        // tan θ = (offset deep − offset shallow)/(depth deep − depth shallow): a flank touched by a pin at two depths; positive is a back taper.
        new NamedFunction(
            "flank-angle-from-two-depths",
            ["offset-shallow", "offset-deep", "depth-shallow", "depth-deep"],
            a => Math.Atan((a[1] - a[0]) / (a[3] - a[2]))),

        // tan(half angle) = (large − small)/(2·distance): a cone measured over balls or rings in two planes.
        new NamedFunction(
            "cone-half-angle-from-two-diameters",
            ["large-diameter", "small-diameter", "plane-distance"],
            a => Math.Atan((a[0] - a[1]) / (2 * a[2]))),
        new NamedFunction("ratio", ["numerator", "denominator"], a => a[0] / a[1]),
    }.ToFrozenDictionary(f => f.Name, StringComparer.Ordinal);

    /// <summary>The names in order, for validating a family.</summary>
    public static IEnumerable<string> Names => All.Keys.Order(StringComparer.Ordinal);

    /// <summary>A function by its name, or null when the engine has none such.</summary>
    public static NamedFunction? Find(string name) => All.GetValueOrDefault(name);
}

/// <summary>A function of the engine's library.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Arguments">Names of its arguments, in the order that it takes them.</param>
/// <param name="Value">The function: SI in, SI out; not a number where it has no value.</param>
public sealed record NamedFunction(string Name, IReadOnlyList<string> Arguments, Func<double[], double> Value);
