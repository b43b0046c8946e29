using System.Collections.Immutable;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>One line of a shadow run: a verdict that would change, a unit that could not be compared, or, last, how many there were.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Basis">What was judged again: <c>records</c>, or the id of the judgement that was kept.</param>
/// <param name="Change">The verdict that would change.</param>
/// <param name="NotCompared">Why the unit could not be compared.</param>
/// <param name="Summary">How many there were; on the last line alone, so that an answer cut short is noticed.</param>
public sealed record RejudgementLine(string? Unit, string? Basis, VerdictChangeWire? Change, string? NotCompared, RejudgementSummary? Summary);

/// <summary>How many units a shadow run looked at.</summary>
/// <param name="Rules">The edition under which they were judged again.</param>
/// <param name="DeclarationSha256">Hash of its canonical declaration.</param>
/// <param name="Units">Units of the family.</param>
/// <param name="Changed">Units of which at least one verdict would change.</param>
/// <param name="Verdicts">Verdicts that would change.</param>
/// <param name="NotCompared">Units that could not be compared.</param>
public sealed record RejudgementSummary(FamilyEditionWire Rules, string DeclarationSha256, int Units, int Changed, int Verdicts, int NotCompared);

/// <summary>A verdict that comes out otherwise under other rules.</summary>
/// <param name="Sort">part, characteristic, clearance or pairing.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Before">What was said; absent when the old rules say nothing of it.</param>
/// <param name="After">What would be said; absent when the new rules say nothing of it.</param>
public sealed record VerdictChangeWire(string Sort, string Subject, SpokenWire? Before, SpokenWire? After);

/// <summary>What a verdict says.</summary>
/// <param name="Outcome">Its outcome.</param>
/// <param name="Probability">Chance that the true value conforms.</param>
/// <param name="Reasons">Why, in words.</param>
public sealed record SpokenWire(string Outcome, double? Probability, ImmutableArray<string> Reasons);

/// <summary>A unit to be moved to the edition of the rules that is loaded now.</summary>
/// <param name="Person">Who decides it and signs.</param>
/// <param name="Bench">Where.</param>
/// <param name="Reason">Why, in the person's own words.</param>
public sealed record EditionMoveRequest([Words(100)] string Person, [Words(100)] string Bench, [Words(2000, Lines = true)] string Reason);

/// <summary>A unit that was moved to another edition of its family's rules, with all that this changed.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="From">The edition it was pinned to.</param>
/// <param name="To">The edition it is pinned to now.</param>
/// <param name="Decision">The decision that records it.</param>
/// <param name="Basis">What was judged again: <c>records</c>, the id of the judgement that was kept, or absent when there was nothing to compare with.</param>
/// <param name="Changes">The verdicts that come out otherwise.</param>
public sealed record EditionMoveWire(
    UnitWire Unit, FamilyEditionWire From, FamilyEditionWire To, string Decision, string? Basis, ImmutableArray<VerdictChangeWire> Changes);
