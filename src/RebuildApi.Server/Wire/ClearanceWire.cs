using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Wire;

/// <summary>Will one clearance come right, and how?</summary>
/// <param name="Clearance">Its id.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Group">The assembly it belongs to.</param>
/// <param name="Outcome">The outcome at 20 °C. Only conforming counts as good.</param>
/// <param name="Verdict">The verdict with its reasons.</param>
/// <param name="WithoutPieces">Whether the values are of the gap without the selective pieces that are still to be chosen.</param>
/// <param name="Gap">The gap, from parts and trial together, or from the one there is.</param>
/// <param name="FromParts">The gap summed from the parts.</param>
/// <param name="FromTrial">The gap by trial assembly, carried over to the pieces that count.</param>
/// <param name="WorstLow">The smallest gap by parts that the tolerances allow.</param>
/// <param name="WorstHigh">The largest gap by parts that the tolerances allow.</param>
/// <param name="RootSumSquare">Statistical half-width of the gap by parts.</param>
/// <param name="Trial">The readings of the trial assembly.</param>
/// <param name="Terms">The members with what each adds to the doubt.</param>
/// <param name="Alarm">Raised when parts and trial do not agree.</param>
/// <param name="Ring">Which piece brings it right.</param>
/// <param name="Thermal">The gap cold and hot.</param>
/// <param name="Decision">What a person chose. The outcome stays what it is.</param>
/// <param name="Consequence">What then happens; said when the gap is outside its window.</param>
public sealed record ClearanceWire(
    string Clearance,
    string Name,
    string Group,
    Outcome Outcome,
    VerdictWire Verdict,
    bool WithoutPieces,
    EstimateWire? Gap,
    EstimateWire? FromParts,
    EstimateWire? FromTrial,
    QuantityWire? WorstLow,
    QuantityWire? WorstHigh,
    QuantityWire? RootSumSquare,
    GapReadingWire? Trial,
    ImmutableArray<LoopTermWire> Terms,
    MixUpWire? Alarm,
    RingWire? Ring,
    ImmutableArray<ThermalGapWire> Thermal,
    DecisionBesideWire? Decision,
    string? Consequence = null)
{
    /// <summary>From the engine.</summary>
    public static ClearanceWire From(ClearanceAnswer answer, FamilyIndex family, DecisionsBeside decisions, Display show)
    {
        var loop = family.Loops[answer.Verdict.Subject];
        return new(
            loop.Id,
            show.Words(loop.Name),
            loop.Group,
            answer.Verdict.Outcome,
            VerdictWire.From(answer.Verdict, decisions, show, family),
            answer.IsWithoutPieces,
            EstimateWire.From(answer.Combined, show),
            EstimateWire.From(answer.FromParts, show),
            EstimateWire.From(answer.FromTrial, show),
            show.LengthMaybe(answer.WorstLow),
            show.LengthMaybe(answer.WorstHigh),
            answer.RootSumSquare is { } rss ? show.Metres(rss) : null,
            GapReadingWire.From(answer.Trial, show),
            [.. answer.Terms.Select(t => LoopTermWire.From(t, show))],
            MixUpWire.From(answer.Alarm, show),
            RingWire.From(answer.Ring, family, show),
            [.. answer.Thermal.Select(t => ThermalGapWire.From(t, family, show))],
            decisions.On(loop.Id),
            answer.Consequence is { } then ? show.Words(then) : null);
    }
}

/// <summary>The readings of one trial assembly taken together.</summary>
/// <param name="Trial">The trial assembly.</param>
/// <param name="Angles">How many readings there are.</param>
/// <param name="Tight">No gap at all, and the shortfall unknown.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Smallest">The smallest.</param>
/// <param name="Largest">The largest.</param>
/// <param name="Spread">Largest minus smallest; a spread says that something is tilted or warped.</param>
public sealed record GapReadingWire(
    string Trial, int Angles, bool Tight, QuantityWire? Mean, QuantityWire? Smallest, QuantityWire? Largest, QuantityWire? Spread)
{
    /// <summary>From the engine.</summary>
    public static GapReadingWire? From(GapReading? gap, Display show) => gap is null
        ? null
        : new(gap.Trial, gap.Angles, gap.IsTight, show.LengthMaybe(gap.Mean), show.LengthMaybe(gap.Smallest), show.LengthMaybe(gap.Largest), show.LengthMaybe(gap.Spread));
}

/// <summary>One member of a clearance with what is known of it.</summary>
/// <param name="Name">Its address, series at position, or fixed.</param>
/// <param name="Coefficient">Signed; positive opens the gap.</param>
/// <param name="Estimate">What is known of the dimension itself.</param>
/// <param name="HalfWidth">Half-width that it adds to the gap.</param>
/// <param name="StandardUncertainty">Standard uncertainty that it adds to the gap.</param>
/// <param name="Share">Share of the variance of the gap, 0 to 1: the largest is what to measure better.</param>
public sealed record LoopTermWire(
    string Name, string Coefficient, EstimateWire? Estimate, QuantityWire HalfWidth, QuantityWire StandardUncertainty, double? Share) : IInWords
{
    /// <summary>From the engine.</summary>
    public static LoopTermWire From(TermValue term, Display show) => new(
        term.Name, TermWire.From(term.Term, show).Coefficient, EstimateWire.From(term.Estimate, show), show.Metres(term.HalfWidth), show.Metres(term.StandardUncertainty), Numbers.Finite(term.Share));

    /// <inheritdoc/>
    public string InWords() => Estimate?.Value is { } v ? $"{Coefficient} × {Name} {v.Value.Text} {v.Unit}" : $"{Coefficient} × {Name} unknown";
}

/// <summary>Parts and trial assembly do not agree: something was read, written down or fitted wrongly.</summary>
/// <param name="Residual">Gap by trial assembly minus gap by parts.</param>
/// <param name="StandardUncertainty">Standard uncertainty of the residual.</param>
/// <param name="Likely">What would explain it, best first.</param>
public sealed record MixUpWire(QuantityWire Residual, QuantityWire StandardUncertainty, ImmutableArray<MixUpCauseWire> Likely)
{
    /// <summary>From the engine.</summary>
    public static MixUpWire? From(MixUp? alarm, Display show) => alarm is null
        ? null
        : new(show.Length(alarm.Residual), show.Metres(alarm.StandardUncertainty),
            [.. alarm.Likely.Select(l => new MixUpCauseWire(Kebab.Of(l.Slip), l.At, l.Written, l.Meant, show.Length(l.Left)))]);
}

/// <summary>One simple slip that would make parts and trial agree.</summary>
/// <param name="Slip">What may have happened.</param>
/// <param name="At">Where.</param>
/// <param name="Written">What was written down.</param>
/// <param name="Meant">What it probably was.</param>
/// <param name="Left">How much residual would be left.</param>
public sealed record MixUpCauseWire(string Slip, string At, string Written, string Meant, QuantityWire Left);

/// <summary>The gap at another temperature.</summary>
/// <param name="When">Cold or hot.</param>
/// <param name="Temperature">The temperature of all parts.</param>
/// <param name="Gap">What is known of the gap there.</param>
/// <param name="Window">The window there.</param>
/// <param name="Outcome">That gap against that window.</param>
/// <param name="Reasons">Why.</param>
public sealed record ThermalGapWire(
    string When, QuantityWire Temperature, EstimateWire? Gap, LimitsWire? Window, Outcome Outcome, ImmutableArray<ReasonWire> Reasons)
{
    /// <summary>From the engine.</summary>
    public static ThermalGapWire From(ThermalGap t, FamilyIndex family, Display show) => new(
        t.When, show.Si(t.Kelvin, Dimension.Temperature), EstimateWire.From(t.Gap, show), LimitsWire.From(t.Window, show), t.Outcome, [.. t.Reasons.Select(r => ReasonWire.From(r, family))]);
}
