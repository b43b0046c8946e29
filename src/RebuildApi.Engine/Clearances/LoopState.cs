using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;

namespace RebuildApi.Engine.Clearances;

/// <summary>Everything known of one clearance with one choice of which pieces are in place: by parts, by trial, and both together.</summary>
/// <param name="Parts">The gap by parts.</param>
/// <param name="Trial">The trial that counts, or none.</param>
/// <param name="Alarm">Raised when they do not agree.</param>
/// <param name="Combined">Both together.</param>
/// <param name="Passed">Why trials do not count.</param>
internal sealed record LoopState(LoopValue Parts, TrialGap? Trial, MixUp? Alarm, Estimate Combined, ImmutableArray<Reason> Passed)
{
    /// <summary>Looks at a loop with the pieces at <paramref name="isOpen"/> positions left out; the unknown ones are left out anyhow.</summary>
    public static LoopState Of(ClearanceLoop loop, LoopTerms terms, EstimateBook book, Func<string, bool>? isOpen = null)
    {
        isOpen ??= _ => false;
        var parts = LoopValue.Sum(terms.Known(isOpen));
        var now = terms.Pieces.Select(p => p.Placed.AreKnown && !isOpen(p.Placed.Of.Position)
            ? (p.Term, (Estimate?)p.Placed.Thickness, p.Placed.Members)
            : (p.Term, null, [])).ToImmutableArray();
        var trials = book.View.TrialsOf(loop.Id).Select(t => (Trial: t, Not: TrialStanding.WhyNot(t, loop, book.View))).ToImmutableArray();
        var trial = Best([.. trials.Where(t => t.Not is null).Select(t => TrialGap.Of(t.Trial, now, book.View))]);
        return new LoopState(
            parts,
            trial,
            trial is null ? null : Reconciliation.Compare(loop, parts.Estimate, trial, book),
            trial is null ? parts.Estimate : Reconciliation.Combine(parts.Estimate, trial.Estimate),
            [.. trials.Select(t => t.Not).OfType<Reason>()]);
    }

    /// <summary>The newest trial with a value counts before any bound; of bounds, the tightest of each side together.</summary>
    private static TrialGap? Best(ImmutableArray<TrialGap> trials)
    {
        if (trials.Where(t => t.Estimate.Value is not null).MaxBy(t => (t.Trial.Taken.At, t.Trial.Id)) is { } valued)
            return valued;
        var bounds = trials.Where(t => t.Estimate.Low is not null || t.Estimate.High is not null).OrderBy(t => t.Trial.Taken.At).ThenBy(t => t.Trial.Id, StringComparer.Ordinal).ToArray();
        if (bounds.Length == 0)
            return null;
        var low = bounds.Select(b => b.Estimate.Low).OfType<Exact>().MaxBy(e => e.Value);
        var high = bounds.Select(b => b.Estimate.High).OfType<Exact>().MinBy(e => e.Value);
        var newest = bounds[^1];
        return newest with { Estimate = newest.Estimate with { Low = low, High = high } };
    }
}
