using System.Collections.Immutable;
using System.Numerics;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pieces;

namespace RebuildApi.Engine.Selection;

/// <summary>Turns the clearances of a unit, what its series offer and the cuts it permits into a choice problem.</summary>
internal sealed class UnitProblem(EstimateBook book, SelectionRequest request)
{
    /// <summary>The problem.</summary>
    /// <exception cref="ArgumentException">Two clearances name different series for one position, the request an unknown series or a target outside its window.</exception>
    public SelectionProblem Of(ImmutableArray<UnitLoop> loops, ImmutableArray<(Cut Cut, CutLimit Limit)> cuts) => new(
        [.. loops.Select(l => LoopOf(l, cuts))],
        [.. PositionsOf(loops).Select(ChoiceOf), .. cuts.Select(c => ChoiceOf(c.Cut, c.Limit))],
        request.Available);

    private static IEnumerable<OfSeries> PositionsOf(ImmutableArray<UnitLoop> loops) =>
        loops.SelectMany(l => l.Loop.Terms).Select(t => t.Of).OfType<OfSeries>()
            .GroupBy(s => s.Position, StringComparer.Ordinal)
            .Select(g => g.Select(s => s.Series).Distinct().Count() == 1
                ? g.MinBy(s => s.MaxPieces)!
                : throw new ArgumentException($"Two clearances name different series at {g.Key}.", nameof(loops)));

    private SelectionChoice ChoiceOf(OfSeries of)
    {
        var series = SeriesOf(of);
        var packs = request.Available is null
            ? Packs.Of(series, of.MaxPieces, null, request.Prices)
            : Packs.All(series, of.MaxPieces, request.Available, request.Prices);
        return new SelectionChoice(of.Position, [.. packs.Select(p => new SelectionOption(p.Members, p.Thickness, p.Cost))]);
    }

    private static SelectionChoice ChoiceOf(Cut cut, CutLimit limit)
    {
        var steps = Enumerable.Range(0, limit.MostSteps!.Value + 1).Where(s => s == 0 || s >= limit.FewestSteps);
        return new SelectionChoice(cut.Id, [.. steps.Select(s => new SelectionOption([], s * Cut.PerStep(cut.Main), null, s * cut.Main.Step))]);
    }

    private SelectionLoop LoopOf(UnitLoop loop, ImmutableArray<(Cut Cut, CutLimit Limit)> cuts)
    {
        var pieces = loop.Loop.Terms.Where(t => t.Of is OfSeries).ToImmutableArray();
        var u = Math.Sqrt(Math.Pow(loop.State.Combined.StandardUncertainty, 2) + pieces.Sum(PieceVariance));
        var window = WindowOf.Loop(loop.Loop, book.View.Snapshot.Policy);
        var guarded = GuardedWindow.Of(window, u, loop.State.Combined.DegreesOfFreedom, book.View.Snapshot.Policy.For(loop.Loop.Criticality));
        var gap = loop.Gap!.Value;
        if (pieces.IsEmpty)
            guarded = NotWorse(guarded, gap);
        return new SelectionLoop(
            loop.Loop.Id, gap, u, guarded.Low, guarded.High, TargetOf(loop.Loop, window),
            [.. pieces.Select(t => new SelectionTerm(((OfSeries)t.Of).Position, t.Numerator, t.Denominator)), .. cuts.SelectMany(c => TermsOf(c.Cut, loop.Loop))]);
    }

    /// <summary>A clearance without a piece to choose can't be asked for more than that a cut does not make it worse.</summary>
    private static GuardedWindow NotWorse(GuardedWindow guarded, Length gap) => new(
        guarded.Low is { } low ? Smaller(low, gap) : null,
        guarded.High is { } high ? Larger(high, gap) : null);

    /// <summary>Of a stack of up to n pieces, each within its tolerance t (rectangular): n · (coefficient · t/√3)², the widest there can be.</summary>
    private double PieceVariance(Term term)
    {
        var of = (OfSeries)term.Of;
        return of.MaxPieces * Math.Pow(SeriesOf(of).Tolerance.InMetres * term.Numerator / term.Denominator, 2) / 3;
    }

    /// <summary>The change of a gap for each nanometre of the dimension that the cut is about: its own effect, and the others in step with it.</summary>
    private IEnumerable<SelectionTerm> TermsOf(Cut cut, ClearanceLoop loop)
    {
        foreach (var term in loop.Terms.Where(t => t.Of is OfPart))
        {
            foreach (var effect in cut.Operation.Effects)
            {
                foreach (var (top, bottom) in Dependence.Of(((OfPart)term.Of).At, new Address(cut.Position, effect.At.Characteristic), book.View.Family))
                {
                    var numerator = (BigInteger)term.Numerator * top * Cut.PerStep(effect).Nanometres;
                    var denominator = (BigInteger)term.Denominator * bottom * Cut.PerStep(cut.Main).Nanometres;
                    var common = BigInteger.GreatestCommonDivisor(numerator, denominator) * denominator.Sign;
                    yield return new SelectionTerm(cut.Id, (int)(numerator / common), (int)(denominator / common));
                }
            }
        }
    }

    private Length TargetOf(ClearanceLoop loop, Limits window)
    {
        if (!request.Targets.TryGetValue(loop.Id, out var target))
            return WindowOf.Target(window);
        return window.Contains(target)
            ? target
            : throw new ArgumentException($"targets: {target} is not in the window of {loop.Id}.", nameof(loop));
    }

    private Series SeriesOf(OfSeries of)
    {
        var id = request.Series.GetValueOrDefault(of.Position, of.Series);
        return book.View.Family.Series.TryGetValue(id, out var series)
            ? series
            : throw new ArgumentException($"series: there is no series {id}.", nameof(of));
    }

    private static Length Smaller(Length a, Length b) => a < b ? a : b;

    private static Length Larger(Length a, Length b) => a > b ? a : b;
}
