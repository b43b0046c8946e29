using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>Everything that is stored of one unit, read in one transaction. Superseded readings and findings are left out.</summary>
public sealed record UnitFile(
    Unit Unit,
    ImmutableArray<Component> Components,
    ImmutableArray<Placement> Placements,
    ImmutableArray<Measurement> Measurements,
    ImmutableArray<TrialAssembly> Trials,
    ImmutableArray<Finding> Findings,
    ImmutableArray<Decision> Decisions,
    ImmutableArray<Instrument> Instruments)
{
    /// <summary>The edition of the shop's policy in force when it was read.</summary>
    public PolicyEdition Policy { get; init; } = PolicyEdition.First;
}
