using System.Collections.Immutable;

namespace RebuildApi.Server.Wire;

/// <summary>All answers about one snapshot.</summary>
/// <param name="Rules">Whose rules.</param>
/// <param name="InputsSha256">Hash of the snapshot.</param>
/// <param name="Parts">Each part, in stripping order.</param>
/// <param name="Clearances">Each clearance.</param>
/// <param name="Pairings">Each pairing.</param>
/// <param name="Missing">What has not been read or seen yet.</param>
/// <param name="Blocks">What keeps the unit from going on.</param>
/// <param name="Complaint">Whether what was found explains the complaint.</param>
/// <param name="Cautions">What can hurt a person or the gearbox, and what stands before these answers.</param>
public sealed record WholeJudgementWire(
    RuleWire Rules,
    string InputsSha256,
    ImmutableArray<PartVerdictWire> Parts,
    ImmutableArray<ClearanceWire> Clearances,
    ImmutableArray<PairingVerdictWire> Pairings,
    ImmutableArray<MissingWire> Missing,
    ImmutableArray<BlockWire> Blocks,
    ImmutableArray<ComplaintWire> Complaint,
    ImmutableArray<string> Cautions);

/// <summary>Why a line can't be judged.</summary>
/// <param name="Code">Stable code, explained at /problems/{code}.</param>
/// <param name="Field">Where.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Got">What was sent.</param>
/// <param name="Allowed">What is allowed.</param>
public sealed record FaultWire(string Code, string Field, string Message, string Got, string Allowed);
