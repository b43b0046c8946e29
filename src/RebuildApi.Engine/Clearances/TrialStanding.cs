using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Clearances;

/// <summary>Whether a trial assembly still speaks for the parts that count now.</summary>
internal static class TrialStanding
{
    /// <summary>Why a trial no longer counts, or nothing when it does: a part of it was exchanged or reworked since, or nothing was read.</summary>
    public static Reason? WhyNot(TrialAssembly trial, ClearanceLoop loop, UnitView view)
    {
        if (trial.Gap.IsEmpty)
            return Because.Of("trial-without-readings", loop.Id, ("trial", trial.Id));
        if (loop.Trial == TrialMethod.UnderLoad && trial.Load is null)
            return Because.Of("trial-without-load", loop.Id, ("trial", trial.Id));
        if (view.Snapshot.Policy.Overdue == OverdueRule.Block && IsOverdue(trial, view))
            return Because.Of("trial-instrument-overdue-blocked", loop.Id, ("trial", trial.Id));
        if (trial.Pieces.FirstOrDefault(p => !view.Family.Series.ContainsKey(p.Series)) is { } strange)
            return Because.Of("trial-with-unknown-series", loop.Id, ("trial", trial.Id), ("series", strange.Series));
        var gone = trial.Fitted.FirstOrDefault(f => !view.At(f.Position).Any(p => p.Component.Id == f.Component && p.Component.Revision == f.Revision));
        if (gone is not null)
            return Because.Of("trial-of-other-parts", loop.Id, ("trial", trial.Id), ("position", gone.Position), ("component", gone.Component));
        return NotNamed(trial, loop, view).FirstOrDefault(position => view.At(position).Any(p => p.Component.Revision > 1)) is { } reworked
            ? Because.Of("trial-perhaps-before-rework", loop.Id, ("trial", trial.Id), ("position", reworked))
            : null;
    }

    /// <summary>What is to be said of the instrument that a trial was read with.</summary>
    public static IEnumerable<Reason> OfInstrument(TrialAssembly trial, ClearanceLoop loop, UnitView view)
    {
        if (view.Instrument(trial.Taken.Instrument) is not { } instrument)
            yield break;
        if (IsOverdue(trial, view))
            yield return Because.Of("trial-instrument-overdue", loop.Id, ("trial", trial.Id));
        if (InstrumentStanding.IsInDoubt(instrument, trial.Taken.At))
            yield return Because.Of("trial-instrument-found-wrong", loop.Id, ("trial", trial.Id));
        if (trial.Gap.Any(r => InstrumentStanding.IsOutside(r, instrument, new Scale(Dimension.Length))))
            yield return Because.Of("trial-outside-range", loop.Id, ("trial", trial.Id));
    }

    private static bool IsOverdue(TrialAssembly trial, UnitView view) =>
        view.Instrument(trial.Taken.Instrument) is { } instrument && InstrumentStanding.IsOverdue(instrument, trial.Taken.At);

    /// <summary>Parts of the loop that the trial does not name: that they were the ones that count now is taken on trust, and said.</summary>
    public static ImmutableArray<string> NotNamed(TrialAssembly trial, ClearanceLoop loop, UnitView view) =>
    [
        .. loop.Terms.Select(t => (t.Of as OfPart)?.At.Position).OfType<string>().Distinct()
            .Where(position => trial.Fitted.All(f => f.Position != position) && view.At(position).Any()),
    ];
}
