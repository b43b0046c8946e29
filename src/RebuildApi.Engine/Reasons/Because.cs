using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Reasons;

/// <summary>Makes reasons: a code with arguments written the same in every culture; lengths as whole nanometres.</summary>
public static class Because
{
    /// <summary>A reason with its arguments; lengths are written as whole nanometres and want a name that ends in <c>Nm</c>.</summary>
    public static Reason Of(string code, string rule, params ReadOnlySpan<(string Name, object? Value)> arguments)
    {
        var written = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (name, value) in arguments)
            written[name] = Write(value);
        return new Reason(code, written.ToImmutable(), rule);
    }

    private static string Write(object? value) => value switch
    {
        Length length => length.Nanometres.ToString(CultureInfo.InvariantCulture),
        double number => number.ToString("0.###", CultureInfo.InvariantCulture),
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => value?.ToString() ?? "",
    };
}
