using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Reasons;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Judging;

/// <summary>What keeps a unit from going on. Nothing unknown lets it pass.</summary>
public static class BlockList
{
    /// <summary>Every block, the surest trouble first.</summary>
    public static ImmutableArray<Block> Of(
        ImmutableArray<PartAnswer> parts, ImmutableArray<ClearanceAnswer> clearances, ImmutableArray<PairingVerdict> pairings) =>
    [
        .. parts.Where(p => p.Outcome == Outcome.Nonconforming).Select(Of),
        .. clearances.Where(c => c.Verdict.Outcome == Outcome.Nonconforming).Select(Of),
        .. pairings.Where(p => p.Outcome == Compatibility.Incompatible).Select(Of),
        .. parts.Where(p => p.Outcome is Outcome.Inconclusive or Outcome.NotAssessed).Select(Of),
        .. clearances.Where(c => c.Verdict.Outcome is Outcome.Inconclusive or Outcome.NotAssessed).Select(Of),
        .. pairings.Where(p => p.Outcome is Compatibility.Conditional or Compatibility.NotAssessed).Select(Of),
    ];

    private static Block Of(PartAnswer part) => Of(Subjects.Of(part.Position, part.Index), part switch
    {
        { Component: null } => "block-no-part",
        { Outcome: Outcome.Nonconforming } => "block-nonconforming",
        { Outcome: Outcome.Inconclusive } => "block-inconclusive",
        _ => "block-not-assessed",
    });

    private static Block Of(ClearanceAnswer clearance) => Of(
        clearance.Verdict.Subject, clearance.Verdict.Outcome == Outcome.Nonconforming ? "block-clearance" : "block-clearance-open");

    private static Block Of(PairingVerdict pairing) => Of(pairing.Rule, pairing.Outcome switch
    {
        Compatibility.Incompatible => "block-pairing",
        Compatibility.Conditional => "block-condition",
        _ => "block-pairing-open",
    });

    private static Block Of(string subject, string code) => new(subject, Because.Of(code, subject));
}
