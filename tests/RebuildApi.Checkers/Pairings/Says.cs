using RebuildApi.Checkers.Plans;
using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Pairings;

/// <summary>What single checks may come to; several where a chance lies on the threshold itself.</summary>
internal static class Says
{
    private static readonly Compatibility[] s_worse = [Compatibility.Compatible, Compatibility.Conditional, Compatibility.NotAssessed, Compatibility.Incompatible];

    public static IReadOnlySet<Compatibility> Just(Compatibility outcome) => new HashSet<Compatibility> { outcome };

    public static IReadOnlySet<Compatibility> Fine => Just(Compatibility.Compatible);

    public static IReadOnlySet<Compatibility> Open => Just(Compatibility.NotAssessed);

    /// <summary>The worst decides; nothing asked is nothing answered.</summary>
    public static IReadOnlySet<Compatibility> Worst(IEnumerable<IReadOnlySet<Compatibility>> all) =>
        all.ToArray() is { Length: > 0 } some ? some.Aggregate((a, b) => a.SelectMany(x => b.Select(y => Worse(x, y))).ToHashSet()) : Open;

    public static IReadOnlySet<Compatibility> Holds(this CheckedCase parts, bool? holds) => holds switch
    {
        true => Fine,
        false => Just(parts.Broken),
        null => Open,
    };

    /// <summary>One of the values allowed.</summary>
    public static IReadOnlySet<Compatibility> OneOf(this CheckedCase parts, string role, string name, params IEnumerable<string> allowed) =>
        parts.Holds(parts.See(role, name) is { } value ? allowed.Contains(value) : null);

    /// <summary>The same value in all roles: two that differ break it, whatever the others are.</summary>
    public static IReadOnlySet<Compatibility> Alike(this CheckedCase parts, string name, params IEnumerable<string> roles)
    {
        var seen = roles.Select(r => parts.See(r, name)).ToArray();
        return parts.Holds(seen.OfType<string>().Distinct().Count() > 1 ? false : seen.Contains(null) ? null : true);
    }

    /// <summary>A value within a window, ends included.</summary>
    public static IReadOnlySet<Compatibility> Within(this CheckedCase parts, CheckedValue? value, double? low, double? high) =>
        Deciding.Of(value, low, high, parts.Values.Unit.Snapshot.Policy).Select(o => o switch
        {
            Outcome.Conforming => Compatibility.Compatible,
            Outcome.Nonconforming => parts.Broken,
            _ => Compatibility.NotAssessed,
        }).ToHashSet();

    /// <summary>The first less the second; none when one is not known.</summary>
    public static CheckedValue? Less(CheckedValue? first, CheckedValue? second) =>
        first is null || second is null ? null : CheckedValue.Sum([(1, first), (-1, second)], EstimateBasis.Derived);

    private static Compatibility Worse(Compatibility a, Compatibility b) => Array.IndexOf(s_worse, a) >= Array.IndexOf(s_worse, b) ? a : b;
}
