using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>Somewhere that the shop has parts: in its units, on its shelf, in its catalogue. Every source that is registered is asked.</summary>
public interface ICandidateSource
{
    /// <summary>The parts of one kind that could go into a unit. Parts that are fitted in another gearbox are left out.</summary>
    /// <param name="wanted">What is looked for.</param>
    /// <param name="cancellation">Gives up.</param>
    ValueTask<ImmutableArray<OfferedPart>> Find(PartWanted wanted, CancellationToken cancellation);
}

/// <summary>What is looked for.</summary>
/// <param name="For">The unit that it would go into.</param>
/// <param name="Family">Its rules.</param>
/// <param name="Place">Where it would go.</param>
/// <param name="Kind">The kind that belongs there.</param>
public sealed record PartWanted(UnitFile For, FamilyIndex Family, Place Place, string Kind);

/// <summary>A part that could go in, and where it is now.</summary>
/// <param name="Candidate">The part with what is known of it. Its id is unique over all sources.</param>
/// <param name="From">What sort of place it is in.</param>
/// <param name="Unit">The unit that it is in, when it is in one.</param>
/// <param name="Placement">Where it is in that unit, when it is placed.</param>
public sealed record OfferedPart(Candidate Candidate, PartFrom From, string? Unit = null, Placement? Placement = null);
