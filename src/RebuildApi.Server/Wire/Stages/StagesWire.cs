using System.Collections.Immutable;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Stages;

/// <summary>Where a unit is between intake and hand-over, how it came there, and what its next gate asks for.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Stage">Where it is.</param>
/// <param name="Version">Its row version.</param>
/// <param name="Way">The stages in order, each with when it was left through its gate.</param>
/// <param name="Next">The next gate; absent when none leads on, or while the unit can't be judged.</param>
/// <param name="WhyNot">Why it can't be judged now; absent when it can.</param>
/// <param name="MayGoTo">Where it may go: through the next gate, back, or away unrepaired.</param>
/// <param name="LeftOut">Everything that was left out at a gate on the way, however long ago.</param>
/// <param name="Passings">Every step, oldest first.</param>
/// <param name="Cautions">What stands before it all.</param>
public sealed record StagesWire(
    string Unit,
    string Stage,
    long Version,
    ImmutableArray<StageWire> Way,
    GateWire? Next,
    string? WhyNot,
    ImmutableArray<string> MayGoTo,
    ImmutableArray<LeftOutWire> LeftOut,
    ImmutableArray<PassingWire> Passings,
    ImmutableArray<string> Cautions);

/// <summary>One stage of the way.</summary>
/// <param name="Stage">Which.</param>
/// <param name="State"><c>passed</c>, <c>here</c> or <c>ahead</c>.</param>
/// <param name="Time">When it was last left through its gate, UTC.</param>
/// <param name="Person">Who let it through.</param>
public sealed record StageWire(string Stage, string State, DateTimeOffset? Time, string? Person);

/// <summary>A gate held against a unit.</summary>
/// <param name="To">Where it leads.</param>
/// <param name="Open">Whether everything that it asks for is there.</param>
/// <param name="Requirements">What it asks for.</param>
public sealed record GateWire(string To, bool Open, ImmutableArray<RequirementWire> Requirements);

/// <summary>What a gate asks for.</summary>
/// <param name="Requirement">Its id.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Met">Whether it is there.</param>
/// <param name="Leave"><c>never</c>, <c>not-available</c> with a reason, or <c>exception</c> over a signature.</param>
/// <param name="MayLeave">Whether the unit may go on without it now.</param>
/// <param name="Unmet">What is missing.</param>
/// <param name="Reason">Why the family asks for it; absent for what every unit needs.</param>
public sealed record RequirementWire(string Requirement, string Name, bool Met, string Leave, bool MayLeave, ImmutableArray<UnmetWire> Unmet, string? Reason);

/// <summary>One thing that is missing.</summary>
/// <param name="Subject">What it is about.</param>
/// <param name="Words">What is missing.</param>
/// <param name="Fix">What to do about it.</param>
/// <param name="Safety">Whether a person can be hurt by it.</param>
public sealed record UnmetWire(string? Subject, string Words, string Fix, bool Safety);

/// <summary>Something that was left out at a gate.</summary>
/// <param name="Requirement">What the gate asked for.</param>
/// <param name="State"><c>not-available</c>, or <c>excepted</c> over a signature.</param>
/// <param name="Reason">Why.</param>
/// <param name="Person">Who signed.</param>
/// <param name="To">Where the gate led.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Left">What was left open.</param>
public sealed record LeftOutWire(string Requirement, string State, string? Reason, string? Person, string To, DateTimeOffset Time, ImmutableArray<string> Left);

/// <summary>One step of a unit.</summary>
/// <param name="Id">Its id.</param>
/// <param name="From">Where it was.</param>
/// <param name="To">Where it went.</param>
/// <param name="Person">Who let it go.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Note">What was noted.</param>
/// <param name="Judgement">The judgement that was kept of it then.</param>
/// <param name="Gate">How each requirement was answered.</param>
public sealed record PassingWire(
    string Id, string From, string To, string Person, DateTimeOffset Time, string? Note, string? Judgement, ImmutableArray<GateAnswerWire> Gate)
{
    /// <summary>From the store.</summary>
    public static PassingWire Of(StagePassing p) => new(
        p.Id, p.From, p.To, p.Person, p.Time, p.Note, p.Judgement, [.. p.Gate.Select(g => new GateAnswerWire(g.Requirement, g.State, g.Reason, g.Person, g.Left))]);
}

/// <summary>How one requirement was answered.</summary>
/// <param name="Requirement">Which.</param>
/// <param name="State"><c>met</c>, <c>not-available</c> or <c>excepted</c>.</param>
/// <param name="Reason">Why it was left out.</param>
/// <param name="Person">Who signed for that.</param>
/// <param name="Left">What was left open.</param>
public sealed record GateAnswerWire(string Requirement, string State, string? Reason, string? Person, ImmutableArray<string> Left);

/// <summary>A check of the whole gearbox that was signed for.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Check">Which.</param>
/// <param name="Passed">Whether it passed.</param>
/// <param name="Person">Who signed.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Note">What was noted.</param>
/// <param name="Build">Hash of what was fitted then.</param>
public sealed record SignOffWire(string Id, string Check, bool Passed, string Person, string Bench, DateTimeOffset Time, string? Note, string Build)
{
    /// <summary>From the store.</summary>
    public static SignOffWire From(SignOff s) => new(s.Id, s.Check, s.Passed, s.Person, s.Bench, s.Time, s.Note, s.BuildSha256);
}
