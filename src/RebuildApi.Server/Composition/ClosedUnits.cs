using System.Collections.Immutable;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>Units that have been handed over: only what is known of those is counted, since the cure has shown by then.</summary>
public static class ClosedUnits
{
    /// <summary>The stage of a closed unit.</summary>
    public const string Stage = UnitStages.HandedOver;

    /// <summary>Cause to in how many units it was confirmed.</summary>
    public static ImmutableSortedDictionary<string, int> Count(IEnumerable<ConfirmedCauses> statements) => statements
        .SelectMany(s => s.Causes)
        .GroupBy(c => c, StringComparer.Ordinal)
        .ToImmutableSortedDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
}
