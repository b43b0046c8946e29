using System.Collections.Immutable;

namespace RebuildApi.Server.Wire;

/// <summary>All answers about a unit together, as they are kept when someone relies on them.</summary>
/// <param name="Parts">Each part.</param>
/// <param name="Clearances">Each clearance.</param>
/// <param name="Pairings">Each pairing.</param>
public sealed record JudgementWire(
    ImmutableArray<PartVerdictWire> Parts, ImmutableArray<ClearanceWire> Clearances, ImmutableArray<PairingVerdictWire> Pairings);
