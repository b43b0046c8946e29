using System.Collections.Immutable;
using System.Text.Json.Serialization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Selection;

/// <summary>What is asked of a selection for a unit.</summary>
public sealed record SelectionRequest
{
    /// <summary>The clearances to bring right; empty means all that have a selective piece. Those that share a piece with them are taken along.</summary>
    public ImmutableArray<string> Loops { get; init; } = [];

    /// <summary>When cuts may be proposed.</summary>
    public CutUse Cuts { get; init; } = CutUse.WhenNeeded;

    /// <summary>Wanted gaps that differ from the family's, by clearance; inside their windows.</summary>
    public ImmutableDictionary<string, Length> Targets { get; init; } = ImmutableDictionary<string, Length>.Empty;

    /// <summary>Another series to choose from at a position.</summary>
    public ImmutableDictionary<string, string> Series { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>How many of each member are on the shelf; none means any that can be bought.</summary>
    public ImmutableDictionary<string, int>? Available { get; init; }

    /// <summary>Member to price in minor units, where known.</summary>
    public ImmutableDictionary<string, long> Prices { get; init; } = ImmutableDictionary<string, long>.Empty;

    /// <summary>How many alternatives to rank after the best.</summary>
    public int Alternatives { get; init; } = 3;
}

/// <summary>When cuts may be proposed.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<CutUse>))]
public enum CutUse
{
    /// <summary>Only when pieces alone can't bring every clearance right.</summary>
    WhenNeeded,

    /// <summary>Never.</summary>
    Never,

    /// <summary>Whenever they make the choice better.</summary>
    Always,
}
