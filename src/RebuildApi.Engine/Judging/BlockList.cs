using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Reasons;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Judging;

/// <summary>What keeps a unit from going on. Nothing unknown lets it pass.</summary>
public static class BlockList
{
    /// <summary>Every block: first where a person can be hurt, then the surest trouble.</summary>
    public static ImmutableArray<Block> Of(
        FamilyIndex family, ImmutableArray<PartAnswer> parts, ImmutableArray<ClearanceAnswer> clearances, ImmutableArray<PairingVerdict> pairings) =>
    [
        .. parts.SelectMany(p => ToSign(p, family)),
        .. clearances.Where(c => family.Loops[c.Verdict.Subject].Criticality == Criticality.SafetyCritical).SelectMany(c => ToSign(c.Verdict)),
        .. parts.Where(p => p.Outcome == Outcome.Nonconforming).Select(Of),
        .. clearances.Where(c => c.Verdict.Outcome == Outcome.Nonconforming).Select(Of),
        .. pairings.Where(p => p.Outcome == Compatibility.Incompatible).Select(Of),
        .. parts.Where(p => p.Outcome is Outcome.Inconclusive or Outcome.NotAssessed).Select(Of),
        .. clearances.Where(c => c.Verdict.Outcome is Outcome.Inconclusive or Outcome.NotAssessed).Select(Of),
        .. pairings.Where(p => p.Outcome is Compatibility.Conditional or Compatibility.NotAssessed).Select(Of),
    ];

    private static IEnumerable<Block> ToSign(PartAnswer part, FamilyIndex family) => part.Component is not { } component
        ? []
        : part.Verdicts
            .Where(v => family.CharacteristicOf(component.Kind, CharacteristicOf(v.Subject))?.Criticality == Criticality.SafetyCritical)
            .SelectMany(ToSign);

    /// <summary>What can hurt a person goes on only over a named person's signature, unless it surely conforms.</summary>
    private static IEnumerable<Block> ToSign(Verdict verdict) =>
        verdict.Outcome == Outcome.Conforming ? [] : [Of(verdict.Subject, "block-safety")];

    private static string CharacteristicOf(string subject) => subject.Split('#')[0].Split('/')[^1];

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
