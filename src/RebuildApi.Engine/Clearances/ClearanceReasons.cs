using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Clearances;

/// <summary>What is said beside the comparison with the window.</summary>
internal static class ClearanceReasons
{
    public static ImmutableArray<Reason> PiecesToChoose(ClearanceLoop loop, LoopTerms terms) =>
    [
        .. terms.Pieces.Where(p => !p.Placed.AreKnown)
            .Select(p => Because.Of("loop-piece-to-be-chosen", loop.Id, ("series", p.Placed.Of.Series), ("position", p.Placed.Of.Position))),
    ];

    /// <summary>Drawing values, trials passed over, an alarm, a tilt, too few angles, parts taken on trust.</summary>
    public static IEnumerable<Reason> Beside(ClearanceLoop loop, LoopState state, EstimateBook book)
    {
        if (state.Combined.Basis is EstimateBasis.Drawing or EstimateBasis.Combined)
        {
            foreach (var term in state.Parts.Terms.Where(t => t.Estimate.Basis == EstimateBasis.Drawing))
                yield return Because.Of("loop-rests-on-drawing", loop.Id, ("at", term.Name));
        }

        if (state.Alarm is { } alarm)
            yield return OfAlarm(loop, alarm);
        foreach (var reason in state.Passed)
            yield return reason;
        if (state.Trial is { } trial)
        {
            foreach (var reason in OfTrial(loop, trial, book))
                yield return reason;
        }
    }

    private static Reason OfAlarm(ClearanceLoop loop, MixUp alarm) => alarm.Likely.FirstOrDefault() is not { } likely
        ? Because.Of("mix-up", loop.Id, ("residualNm", alarm.Residual))
        : Because.Of(CodeOf(likely.Slip), loop.Id, ("residualNm", alarm.Residual), ("at", likely.At), ("written", likely.Written), ("meant", likely.Meant));

    private static string CodeOf(Slip slip) => slip switch
    {
        Slip.TransposedDigits => "mix-up-transposed-digits",
        Slip.ThimbleTurn => "mix-up-thimble-turn",
        Slip.OtherPiece => "mix-up-other-piece",
        _ => "mix-up-other-part",
    };

    private static IEnumerable<Reason> OfTrial(ClearanceLoop loop, TrialGap trial, EstimateBook book)
    {
        if (trial.Reading.IsTight)
            yield return Because.Of("trial-tight", loop.Id, ("trial", trial.Trial.Id));
        if (trial.Reading is { IsTight: false, Angles: < GapReading.FewestAngles })
            yield return Because.Of("trial-too-few-angles", loop.Id, ("trial", trial.Trial.Id), ("angles", trial.Reading.Angles), ("wanted", GapReading.FewestAngles));
        if (trial.Reading.Spread is { } spread && spread > Length.Zero)
            yield return Because.Of("trial-spread", loop.Id, ("trial", trial.Trial.Id), ("spreadNm", spread));
        foreach (var reason in TrialStanding.OfInstrument(trial.Trial, loop, book.View))
            yield return reason;
        foreach (var position in TrialStanding.NotNamed(trial.Trial, loop, book.View))
            yield return Because.Of("trial-part-not-named", loop.Id, ("trial", trial.Trial.Id), ("position", position));
    }
}
