using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Pieces;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Clearances;

/// <summary>Chooses one ring, washer or shim pack for one clearance from what is known of the gap without it.</summary>
internal sealed class RingChooser(ClearanceLoop loop, Limits window, Term term, Series series, Policy policy)
{
    private const int Shown = 8;
    private readonly OfSeries _of = (OfSeries)term.Of;
    private readonly Length _target = WindowOf.Target(window);

    /// <summary>The answer without cuts; those need the whole unit.</summary>
    /// <param name="without">The gap without any piece at the position.</param>
    public RingAnswer Choose(Estimate without)
    {
        if (without.Basis == EstimateBasis.None || (without.Value is null && without.Low is null && without.High is null))
            return Answer(RingOutcome.NotAssessed, [], null, Because.Of("ring-needs-gap-without", loop.Id, ("series", series.Id)));
        var choices = Packs.Of(series, _of.MaxPieces).Select(p => Fit(p, without)).ToImmutableArray();
        return without.Value is null ? FromBounds(choices) : FromValue(choices);
    }

    private RingChoice Fit(Pack pack, Estimate without)
    {
        var shift = Ratio.Times(term, pack.Thickness);
        var piece = series.Tolerance.InMetres / Math.Sqrt(3) * term.Numerator / term.Denominator;
        var u = Math.Sqrt((without.StandardUncertainty * without.StandardUncertainty) + (pack.Members.Length * piece * piece));
        var gap = without with { Value = Moved(without.Value, shift), Low = Moved(without.Low, shift), High = Moved(without.High, shift), StandardUncertainty = u, Budget = [] };
        var judged = Conformance.Assess(loop.Id, gap, window, policy);
        var fromTarget = gap.Value is Exact value ? Magnitude(value.Value - _target) : (Length?)null;
        return new RingChoice(pack.Members, pack.Thickness, gap, judged.Outcome, judged.Probability, fromTarget);
    }

    private RingAnswer FromValue(ImmutableArray<RingChoice> choices)
    {
        ImmutableArray<RingChoice> ranked = [.. choices.OrderBy(Rank).ThenBy(c => c.FromTarget).ThenBy(c => c.Members.Length).ThenByDescending(c => c.Thickness)];
        var best = ranked[0];
        if (best.Outcome == Outcome.Conforming)
            return Answer(RingOutcome.Fits, ranked, null, Chosen("ring-fits", best));
        if (WindowOf.ToEnter(window, GapOf(best)) == Length.Zero)
            return Answer(RingOutcome.Doubtful, ranked, null, Chosen("ring-doubtful", best));
        var miss = new RingMiss(best.Members, WindowOf.ToEnter(window, GapOf(best)), _target - GapOf(best), false);
        return Answer(RingOutcome.NothingFits, ranked, miss, Missed("ring-nothing-fits", miss));
    }

    /// <summary>
    /// Tight with one piece says only that the gap is at most so much. A piece stays possible while its bounds reach the window; when none
    /// does, the best piece misses by at least the distance of its bound, and how much more is not known.
    /// </summary>
    private RingAnswer FromBounds(ImmutableArray<RingChoice> choices)
    {
        var possible = choices.Where(IsPossible).ToImmutableArray();
        if (possible.IsEmpty)
        {
            var nearest = choices.MinBy(c => Magnitude(WindowOf.ToEnter(window, NearestBound(c))))!;
            var miss = new RingMiss(nearest.Members, WindowOf.ToEnter(window, NearestBound(nearest)), _target - NearestBound(nearest), true);
            return Answer(RingOutcome.NothingFits, [nearest], miss, Missed("ring-nothing-fits-even-at-bound", miss));
        }

        ImmutableArray<RingChoice> ranked = [.. possible.OrderBy(c => Magnitude(NearestBound(c) - _target)).ThenByDescending(c => c.Thickness)];
        return Answer(RingOutcome.ReadAgain, ranked, null, Because.Of(
            "ring-try-and-read-again", loop.Id, ("member", Names(ranked[0])), ("thicknessNm", ranked[0].Thickness), ("boundNm", NearestBound(ranked[0]))));
    }

    private bool IsPossible(RingChoice choice) =>
        !(window.Low is Exact low && choice.Gap.High is Exact most && most.Value < low.Value)
        && !(window.High is Exact high && choice.Gap.Low is Exact least && least.Value > high.Value);

    /// <summary>The end of the bounds that comes nearest to the window: all that can be said of a tight gap.</summary>
    private static Length NearestBound(RingChoice choice) => ((Exact)(choice.Gap.High ?? choice.Gap.Low!)).Value;

    private static int Rank(RingChoice choice) => choice.Outcome switch
    {
        Outcome.Conforming => 0,
        Outcome.Inconclusive => 1,
        _ => 2,
    };

    private RingAnswer Answer(RingOutcome outcome, ImmutableArray<RingChoice> ranked, RingMiss? miss, Reason reason) =>
        new(series.Id, _of.Position, outcome, [.. ranked.Take(Shown)], miss, [], [reason]);

    private Reason Chosen(string code, RingChoice choice) => Because.Of(
        code, loop.Id, ("member", Names(choice)), ("thicknessNm", choice.Thickness), ("gapNm", GapOf(choice)), ("targetNm", _target), ("probability", choice.Probability));

    private Reason Missed(string code, RingMiss miss) => Because.Of(
        code, loop.Id, ("series", series.Id), ("member", string.Join(" + ", miss.Members)), ("toEnterNm", miss.ToEnter), ("toTargetNm", miss.ToTarget), ("targetNm", _target));

    private static string Names(RingChoice choice) => string.Join(" + ", choice.Members);

    private static Length GapOf(RingChoice choice) => ((Exact)choice.Gap.Value!).Value;

    private static Exact? Moved(Quantity? end, Length by) => end is Exact exact ? new Exact(exact.Value + by) : null;

    private static Length Magnitude(Length length) => length < Length.Zero ? -length : length;
}
