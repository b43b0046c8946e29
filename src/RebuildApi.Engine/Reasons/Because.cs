using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Reasons;

/// <summary>Makes reasons: a code, the rule that speaks, and its arguments as pairs.</summary>
public static class Because
{
    /// <summary>A reason with its arguments.</summary>
    public static Reason Of(string code, string rule, params ReadOnlySpan<(string Name, string Value)> arguments)
    {
        var named = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (name, value) in arguments)
            named[name] = value;
        return new Reason(code, named.ToImmutable(), rule);
    }
}
