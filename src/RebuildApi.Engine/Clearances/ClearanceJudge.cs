using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Clearances;

/// <summary>Judges one clearance of a unit from measured parts, from trial assemblies, or from both.</summary>
public static class ClearanceJudge
{
    /// <summary>The answer for one loop.</summary>
    /// <param name="loop">A loop of the family.</param>
    /// <param name="book">What is known of the unit.</param>
    /// <exception cref="ArgumentException">The loop is open, or names an absent characteristic or series, or its window is not one of lengths.</exception>
    public static ClearanceAnswer Judge(ClearanceLoop loop, EstimateBook book) => Judge(loop, book, ring: true);

    /// <summary>The same without asking which piece would do or what would have to be cut: for what-ifs, where that is chosen elsewhere.</summary>
    internal static ClearanceAnswer JudgeGap(ClearanceLoop loop, EstimateBook book) => Judge(loop, book, ring: false);

    private static ClearanceAnswer Judge(ClearanceLoop loop, EstimateBook book, bool ring)
    {
        var window = WindowOf.Loop(loop, book.View.Snapshot.Policy);
        var terms = LoopTerms.Of(loop, book);
        var state = LoopState.Of(loop, terms, book);
        var thermal = terms.PiecesAreKnown ? ThermalGap.Of(loop, state.Combined, state.Parts.Terms, book.View) : [];
        var verdict = Verdict(loop, window, terms, state, book);
        return new ClearanceAnswer(
            verdict,
            !terms.PiecesAreKnown,
            state.Parts.WorstLow,
            state.Parts.WorstHigh,
            state.Parts.RootSumSquare,
            Known(state.Parts.Estimate),
            state.Trial?.Estimate,
            state.Combined,
            state.Trial?.Reading,
            state.Parts.Terms,
            state.Alarm,
            ring ? RingFor(loop, window, terms, book) : null,
            thermal)
        {
            Consequence = verdict.Outcome == Outcome.Nonconforming ? Outside(loop, window, state.Combined) : null,
        };
    }

    private static Text? Outside(ClearanceLoop loop, Limits window, Estimate gap) =>
        window.Low is { } low && (gap.Value ?? gap.High) is { } most && most.InSi < low.InSi ? loop.WhenBelow : loop.WhenAbove;

    /// <summary>The gap of a loop as it stands, with its pieces; none when a part or a piece is not known.</summary>
    internal static Length? GapOf(ClearanceLoop loop, EstimateBook book)
    {
        var terms = LoopTerms.Of(loop, book);
        return terms.PiecesAreKnown ? (LoopState.Of(loop, terms, book).Combined.Value as Exact)?.Value : null;
    }

    private static Verdict Verdict(ClearanceLoop loop, Limits window, LoopTerms terms, LoopState state, EstimateBook book)
    {
        var judged = Assess(loop, window, terms, state, book);
        return new Verdict(
            loop.Id,
            judged.Outcome,
            judged.Probability,
            Known(state.Combined),
            window,
            judged.Margin,
            [.. judged.Reasons, .. ClearanceReasons.Beside(loop, state, book)],
            judged.WouldChange,
            book.View.Family.IdentityOf(loop.Id),
            book.View.InputsSha256);
    }

    private static Assessment Assess(ClearanceLoop loop, Limits window, LoopTerms terms, LoopState state, EstimateBook book)
    {
        if (state.Combined.Basis == EstimateBasis.None)
            return NotRead(loop, state.Parts);
        if (!terms.PiecesAreKnown)
            return new Assessment(Outcome.NotAssessed, null, null, ClearanceReasons.PiecesToChoose(loop, terms), []);
        var judged = Conformance.Assess(loop.Id, state.Combined, window, book.View.Snapshot.Policy.For(loop.Criticality));
        return state.Alarm is null ? judged : judged with { Outcome = Outcome.Inconclusive, WouldChange = [] };
    }

    private static Assessment NotRead(ClearanceLoop loop, LoopValue parts)
    {
        var unknown = parts.Terms.Where(t => t.IsUnknown).Select(t => t.Name).Distinct().ToImmutableArray();
        return new Assessment(
            Outcome.NotAssessed,
            null,
            null,
            [.. unknown.Select(name => Because.Of("loop-member-not-read", loop.Id, ("at", name)))],
            [.. unknown.Select(name => new Change("read-it", name, null, Outcome.NotAssessed))]);
    }

    /// <summary>One piece is chosen here: the open one, or the only one. Several open ones are chosen together by a selection.</summary>
    private static RingAnswer? RingFor(ClearanceLoop loop, Limits window, LoopTerms terms, EstimateBook book)
    {
        var open = terms.Pieces.Where(p => !p.Placed.AreKnown).ToImmutableArray();
        if (open.Length > 1 || (open.IsEmpty && terms.Pieces.Length != 1))
            return null;
        var (term, placed) = open.IsEmpty ? terms.Pieces[0] : open[0];
        var without = LoopState.Of(loop, terms, book, position => position == placed.Of.Position);
        var series = PlacedPieces.SeriesOf(placed.Of, book.View.Family);
        var answer = new RingChooser(loop, window, term, series, book.View.Snapshot.Policy.For(loop.Criticality)).Choose(without.Combined);
        if (without.Alarm is not null)
            return answer with { Outcome = RingOutcome.Doubtful, Reasons = [.. answer.Reasons, Because.Of("ring-settle-mix-up-first", loop.Id)] };
        return answer.Miss is { } miss ? answer with { Cuts = CutAdviser.For(loop, miss, book, other => GapOf(other, book)) } : answer;
    }

    private static Estimate? Known(Estimate estimate) => estimate.Basis == EstimateBasis.None ? null : estimate;
}
