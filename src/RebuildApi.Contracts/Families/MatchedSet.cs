using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>Parts that stay together.</summary>
/// <param name="Id">Lower case, digits and hyphens.</param>
/// <param name="Positions">The positions in the set.</param>
/// <param name="Bond">How strictly.</param>
public sealed record MatchedSet(string Id, ImmutableArray<string> Positions, SetBond Bond);

/// <summary>How strictly parts stay together.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<SetBond>))]
public enum SetBond
{
    /// <summary>When one is replaced, all are.</summary>
    ReplaceTogether,

    /// <summary>The very same individuals run together.</summary>
    SameIndividuals,

    /// <summary>The very same individuals, in the same place on each other by their index marks.</summary>
    SameIndividualsAndIndex,
}
