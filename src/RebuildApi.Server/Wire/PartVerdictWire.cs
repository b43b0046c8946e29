using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Wire;

/// <summary>Is one part good?</summary>
/// <param name="Subject">Where it sits; the second of several like parts has <c>#2</c> behind it.</param>
/// <param name="Group">The assembly it belongs to.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Component">The part; absent when none is recorded there.</param>
/// <param name="Revision">Its revision.</param>
/// <param name="Outcome">The worst of its verdicts. Only conforming counts as good.</param>
/// <param name="Disposition">Reuse, rework or replace; undecided while something is open.</param>
/// <param name="Reasons">Why, the worst first.</param>
/// <param name="Condition">What looking at it says.</param>
/// <param name="Verdicts">What its readings say.</param>
/// <param name="Operations">The family's operations that would mend it.</param>
/// <param name="Advice">What else to look for.</param>
/// <param name="Decision">What a person chose. The outcome stays what it is.</param>
public sealed record PartVerdictWire(
    string Subject,
    string Group,
    string Name,
    string? Component,
    int? Revision,
    Outcome Outcome,
    Disposition Disposition,
    ImmutableArray<ReasonWire> Reasons,
    VerdictWire Condition,
    ImmutableArray<VerdictWire> Verdicts,
    ImmutableArray<OperationWire> Operations,
    ImmutableArray<string> Advice,
    DecisionBesideWire? Decision)
{
    /// <summary>From the engine.</summary>
    public static PartVerdictWire From(PartAnswer part, FamilyIndex family, DecisionsBeside decisions, Display show)
    {
        var subject = Subjects.Of(part.Position, part.Index);
        var position = family.Positions[part.Position];
        var worst = part.Verdicts.Append(part.Condition).Where(v => v.Outcome == part.Outcome).SelectMany(v => v.Reasons);
        return new(
            subject,
            position.Group,
            show.Words(position.Name),
            part.Component?.Id,
            part.Component?.Revision,
            part.Outcome,
            part.Disposition,
            [.. worst.Select(r => ReasonWire.From(r, family))],
            VerdictWire.From(part.Condition, decisions, show, family),
            [.. part.Verdicts.Select(v => VerdictWire.From(v, decisions, show, family))],
            [.. part.Operations.Select(o => OperationWire.From(o, show))],
            [.. part.Advice.Select(show.Words)],
            decisions.On(subject));
    }
}

/// <summary>Is every part good, what is missing, what keeps the unit from going on, and does what was found explain the complaint?</summary>
/// <param name="Items">Each part, in stripping order.</param>
/// <param name="Next">The whole address of the next page; absent on the last.</param>
/// <param name="AsOf">When they were worked out, UTC.</param>
/// <param name="Unit">The unit.</param>
/// <param name="UnitVersion">Its version.</param>
/// <param name="Rules">Whose rules; absent when they are not loaded.</param>
/// <param name="InputsSha256">Hash of what they were made from.</param>
/// <param name="Outcomes">How many answers of each outcome there are in all.</param>
/// <param name="Cautions">What can hurt a person or the gearbox, and what stands before these answers.</param>
/// <param name="Missing">What has not been read or seen yet, in stripping order.</param>
/// <param name="Blocks">What keeps the unit from going on.</param>
/// <param name="Complaint">Whether what was found explains the complaint.</param>
public sealed record PartVerdictsWire(
    ImmutableArray<PartVerdictWire> Items,
    string? Next,
    DateTimeOffset AsOf,
    string Unit,
    long UnitVersion,
    RuleWire? Rules,
    string InputsSha256,
    IReadOnlyDictionary<string, int> Outcomes,
    ImmutableArray<string> Cautions,
    ImmutableArray<MissingWire> Missing,
    ImmutableArray<BlockWire> Blocks,
    ImmutableArray<ComplaintWire> Complaint) : AnswersOf<PartVerdictWire>(Items, Next, AsOf, Unit, UnitVersion, Rules, InputsSha256, Outcomes, Cautions);

/// <summary>Something that has not been read or seen yet.</summary>
/// <param name="Subject">Where.</param>
/// <param name="What">What sort of thing.</param>
/// <param name="Id">The characteristic, attribute or clearance.</param>
/// <param name="Name">What a person calls it.</param>
public sealed record MissingWire(string Subject, MissingWhat What, string Id, string Name);

/// <summary>Something that keeps the unit from going on.</summary>
/// <param name="Subject">What it is about.</param>
/// <param name="Reason">Why.</param>
/// <param name="Decision">What a person chose about it.</param>
public sealed record BlockWire(string Subject, ReasonWire Reason, DecisionBesideWire? Decision);

/// <summary>Whether what was found explains one symptom.</summary>
/// <param name="Symptom">The symptom.</param>
/// <param name="Gear">The gear it belongs to.</param>
/// <param name="Explanations">Causes whose signs were found, the likeliest first.</param>
/// <param name="Reasons">The same in codes and words.</param>
public sealed record ComplaintWire(string Symptom, string? Gear, ImmutableArray<ExplanationWire> Explanations, ImmutableArray<ReasonWire> Reasons);

/// <summary>A cause that the bench has signs of.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Signs">The signs that were found.</param>
public sealed record ExplanationWire(string Cause, string Name, ImmutableArray<string> Signs);
