using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Wire;

/// <summary>Which piece of a series brings a clearance right, all else as it is.</summary>
/// <param name="Series">The series.</param>
/// <param name="Position">Where the piece sits.</param>
/// <param name="Outcome">What the series can do: <c>fits</c>, <c>doubtful</c>, <c>read-again</c>, <c>nothing-fits</c>, <c>not-assessed</c>.</param>
/// <param name="Ranked">The pieces, best first.</param>
/// <param name="Miss">By how much the best piece misses, when nothing fits.</param>
/// <param name="Cuts">What may be machined instead, when nothing fits.</param>
/// <param name="Reasons">Why.</param>
public sealed record RingWire(
    string Series, string Position, string Outcome, ImmutableArray<RingChoiceWire> Ranked, RingMissWire? Miss, ImmutableArray<CutWire> Cuts, ImmutableArray<ReasonWire> Reasons)
{
    /// <summary>From the engine.</summary>
    public static RingWire? From(RingAnswer? ring, FamilyIndex family, Display show) => ring is null
        ? null
        : new(
            ring.Series,
            ring.Position,
            Kebab.Of(ring.Outcome),
            [.. ring.Ranked.Select(r => RingChoiceWire.From(r, show))],
            ring.Miss is { } miss ? new RingMissWire(miss.Members, show.Length(miss.ToEnter), show.Length(miss.ToTarget), miss.IsLowerBound) : null,
            [.. ring.Cuts.Select(c => CutWire.From(c, family, show))],
            [.. ring.Reasons.Select(r => ReasonWire.From(r, family))]);
}

/// <summary>One piece, or pack of pieces, with what it does to the gap.</summary>
/// <param name="Members">Ids of the pieces.</param>
/// <param name="Thickness">Their nominal thickness together.</param>
/// <param name="Gap">What is known of the gap with them fitted.</param>
/// <param name="Outcome">That gap against the window.</param>
/// <param name="Probability">Chance that the gap is in the window.</param>
/// <param name="FromTarget">Distance from the wanted gap.</param>
public sealed record RingChoiceWire(
    ImmutableArray<string> Members, QuantityWire Thickness, EstimateWire? Gap, Outcome Outcome, double? Probability, QuantityWire? FromTarget) : IInWords
{
    /// <summary>From the engine.</summary>
    public static RingChoiceWire From(RingChoice choice, Display show) => new(
        choice.Members, show.Length(choice.Thickness), EstimateWire.From(choice.Gap, show), choice.Outcome, Numbers.Finite(choice.Probability), show.LengthMaybe(choice.FromTarget));

    /// <inheritdoc/>
    public string InWords() => $"{string.Join("+", Members)}: {Kebab.Of(Outcome)}";
}

/// <summary>By how much the gap must grow (positive) or shrink (negative) before the nearest piece does it.</summary>
/// <param name="Members">The piece that comes nearest.</param>
/// <param name="ToEnter">The change that brings the gap to the nearer end of the window.</param>
/// <param name="ToTarget">The change that brings it to the wanted gap.</param>
/// <param name="LowerBound">Whether the true change is at least this and perhaps more.</param>
public sealed record RingMissWire(ImmutableArray<string> Members, QuantityWire ToEnter, QuantityWire ToTarget, bool LowerBound);

/// <summary>One permitted cut that would help: a proposal until it is made and the part is read again.</summary>
/// <param name="Operation">The operation of the family.</param>
/// <param name="At">The dimension that it changes.</param>
/// <param name="Datum">The face or axis it is taken from.</param>
/// <param name="ToEnter">Metal to remove, at least, to get into the window.</param>
/// <param name="ToTarget">Metal to remove, at least, to reach the wanted gap.</param>
/// <param name="LowerBound">Whether the true amount may be larger: cut, trial, read again.</param>
/// <param name="Largest">The most that may come off by the face's own limits; absent when that is not known.</param>
/// <param name="Permission">Whether the face's own limits permit it: <c>permitted</c>, <c>to-enter-only</c>, <c>refused</c>, <c>not-assessed</c>.</param>
/// <param name="Touches">Every clearance that the cut changes.</param>
/// <param name="RemeasureGate">Characteristics to read again before the part goes on.</param>
/// <param name="Cautions">What can hurt a person or the part.</param>
/// <param name="Reasons">Why.</param>
public sealed record CutWire(
    string Operation,
    string At,
    string Datum,
    QuantityWire ToEnter,
    QuantityWire ToTarget,
    bool LowerBound,
    QuantityWire? Largest,
    string Permission,
    ImmutableArray<LoopTouchedWire> Touches,
    ImmutableArray<string> RemeasureGate,
    ImmutableArray<string> Cautions,
    ImmutableArray<ReasonWire> Reasons) : IInWords
{
    /// <inheritdoc/>
    public string InWords() => $"{Operation} at {At}: {ToEnter.Value.Text} to {ToTarget.Value.Text} {ToTarget.Unit}, {Permission}";

    /// <summary>From the engine.</summary>
    public static CutWire From(CutAdvice cut, FamilyIndex family, Display show) => new(
        cut.Operation,
        cut.At.ToString(),
        cut.Datum,
        show.Length(cut.ToEnter),
        show.Length(cut.ToTarget),
        cut.IsLowerBound,
        show.LengthMaybe(cut.Largest),
        Kebab.Of(cut.Permission),
        [.. cut.Touches.Select(t => LoopTouchedWire.From(t, family, show))],
        cut.RemeasureGate,
        [.. cut.Cautions.Select(show.Words)],
        [.. cut.Reasons.Select(r => ReasonWire.From(r, family))]);
}

/// <summary>A clearance that a cut changes.</summary>
/// <param name="Clearance">The clearance.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Change">How much its gap changes; signed.</param>
/// <param name="Now">The gap by parts now.</param>
/// <param name="After">The gap by parts after the cut.</param>
/// <param name="Outcome">That gap against its window.</param>
public sealed record LoopTouchedWire(string Clearance, string Name, QuantityWire Change, QuantityWire? Now, QuantityWire? After, Outcome Outcome)
{
    /// <summary>From the engine.</summary>
    public static LoopTouchedWire From(LoopTouched t, FamilyIndex family, Display show) => new(
        t.Loop, show.Words(family.Loops[t.Loop].Name), show.Length(t.Change), show.LengthMaybe(t.Now), show.LengthMaybe(t.After), t.Outcome);
}
