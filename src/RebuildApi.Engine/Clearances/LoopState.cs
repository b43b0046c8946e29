using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;

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
        ImmutableArray<TrialGap> standing = [.. trials.Where(t => t.Not is null).Select(t => TrialGap.Of(t.Trial, now, book.View))];
        var trial = Best(standing);
        return new LoopState(
            parts,
            trial,
            trial is null ? null : Reconciliation.Compare(loop, parts.Estimate, trial, book),
            trial is null ? parts.Estimate : Reconciliation.Combine(parts.Estimate, trial.Estimate),
            [.. trials.Select(t => t.Not).OfType<Reason>(), .. Contradiction(loop, trial, standing)]);
    }

    private static IEnumerable<Reason> Contradiction(ClearanceLoop loop, TrialGap? counted, ImmutableArray<TrialGap> standing)
    {
        if (counted is { Estimate.Value: null } && !Agree(Tightest(standing)))
            yield return Because.Of("trial-bounds-contradict", loop.Id, ("trial", counted.Trial.Id));
    }

    /// <summary>
    /// The newest trial with a value counts before any bound; of bounds, the tightest of each side together. Bounds that contradict each other
    /// can't all be right: then the newest stands alone.
    /// </summary>
    private static TrialGap? Best(ImmutableArray<TrialGap> trials)
    {
        if (trials.Where(t => t.Estimate.Value is not null).MaxBy(t => (t.Trial.Taken.At, t.Trial.Id)) is { } valued)
            return valued;
        var newest = trials.Where(t => t.Estimate.Low is not null || t.Estimate.High is not null).OrderBy(t => t.Trial.Taken.At).ThenBy(t => t.Trial.Id, StringComparer.Ordinal).LastOrDefault();
        var ends = Tightest(trials);
        return newest is null || !Agree(ends) ? newest : newest with { Estimate = newest.Estimate with { Low = ends.Low, High = ends.High } };
    }

    private static (Exact? Low, Exact? High) Tightest(ImmutableArray<TrialGap> trials) => (
        trials.Select(t => t.Estimate.Low).OfType<Exact>().MaxBy(e => e.Value),
        trials.Select(t => t.Estimate.High).OfType<Exact>().MinBy(e => e.Value));

    private static bool Agree((Exact? Low, Exact? High) ends) => !(ends.Low?.Value > ends.High?.Value);
}
