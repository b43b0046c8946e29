using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Complaints;
using RebuildApi.Engine.Pairings;

namespace RebuildApi.Engine.Judging;

/// <summary>All answers about one snapshot under one set of rules.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Rules">Whose rules.</param>
/// <param name="InputsSha256">Hash of the snapshot.</param>
/// <param name="Parts">Is each part good? In stripping order.</param>
/// <param name="Clearances">Does each clearance come right, and how?</param>
/// <param name="Pairings">May the parts run together?</param>
/// <param name="Complaint">Does what was found explain the complaint?</param>
/// <param name="Missing">What has not been read or seen yet, in stripping order.</param>
/// <param name="Blocks">What keeps the unit from going on.</param>
/// <param name="Neighbourhoods">Each sleeve with all the gears that it serves, judged together.</param>
public sealed record Judgement(
    string Unit,
    RuleIdentity Rules,
    string InputsSha256,
    ImmutableArray<PartAnswer> Parts,
    ImmutableArray<ClearanceAnswer> Clearances,
    ImmutableArray<PairingVerdict> Pairings,
    ImmutableArray<ComplaintAnswer> Complaint,
    ImmutableArray<Missing> Missing,
    ImmutableArray<Block> Blocks,
    ImmutableArray<Neighbourhood> Neighbourhoods);
