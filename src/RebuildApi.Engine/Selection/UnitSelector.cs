using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Selection;

/// <summary>Chooses the rings, shims, washers and cuts of a unit: all its coupled clearances at once.</summary>
public static class UnitSelector
{
    private const string Rule = "selection";

    /// <summary>Solves the clearances of a unit.</summary>
    /// <param name="book">What is known of the unit.</param>
    /// <param name="request">What is asked.</param>
    /// <exception cref="ArgumentException">The request or a loop names something that is not there; the field is named.</exception>
    public static UnitSelection Solve(EstimateBook book, SelectionRequest request)
    {
        var loops = UnitLoops.Of(book, request);
        if (loops.Loops.IsEmpty)
            return new UnitSelection(SelectionOutcome.NotAssessed, null, [], [], [], [], loops.LeftOut, [Because.Of("selection-nothing-known", Rule)]);
        var problem = new UnitProblem(book, request).Of(loops.Loops, []);
        if (problem.Choices.FirstOrDefault(c => c.Options.IsEmpty) is { } bare)
            return NothingThere(loops, Because.Of("selection-none-in-stock", Rule, ("position", bare.Id)));
        var pieces = SelectionSolver.Solve(problem, request.Alternatives);
        if (pieces.IsFeasible && request.Cuts != CutUse.Always)
            return Fits(pieces, loops, book, request);
        var cuts = request.Cuts == CutUse.Never ? UnitCuts.None : UnitCuts.Of(loops, book);
        return WithCuts(cuts, loops, pieces, book, request) ?? (pieces.IsFeasible ? Fits(pieces, loops, book, request) : NothingFits(cuts, loops, problem, pieces, book, request));
    }

    private static UnitSelection? WithCuts(UnitCuts cuts, UnitLoops loops, SelectionAnswer pieces, EstimateBook book, SelectionRequest request)
    {
        if (cuts.Cuts.IsEmpty)
            return null;
        var wider = loops.With(cuts.Touched(book), book);
        var problem = new UnitProblem(book, request).Of(wider.Loops, cuts.Cuts);
        if (problem.Choices.Any(c => c.Options.IsEmpty))
            return null;
        var answer = SelectionSolver.Solve(problem, request.Alternatives);
        if (!answer.IsFeasible || (pieces.IsFeasible && answer.Best!.Rank.Removed == 0))
            return null;
        var instructions = cuts.Cuts.SelectMany(c => Instruct(c, answer.Best!, problem, book)).ToImmutableArray();
        return new UnitSelection(
            SelectionOutcome.FitsWithCuts, answer.Best, answer.Alternatives, ChancesOf(answer, wider, book, request), instructions, [], wider.LeftOut,
            [Because.Of("selection-fits-with-cuts", Rule, ("cuts", instructions.Length)), .. cuts.Withheld, .. LeftOutReasons(wider)]);
    }

    private static IEnumerable<CutInstruction> Instruct((Cut Cut, CutLimit Limit) cut, SelectionSolution solution, SelectionProblem problem, EstimateBook book) =>
        solution.Picks.Where(p => p.Choice == cut.Cut.Id && p.Option.Removed > Length.Zero)
            .Select(p => CutInstructions.For(cut.Cut, cut.Limit, p.Option.Removed, solution, problem, book));

    private static ImmutableArray<double> ChancesOf(SelectionAnswer answer, UnitLoops loops, EstimateBook book, SelectionRequest request)
    {
        var chance = new JointChance(loops.Loops, book, request);
        return [.. answer.Alternatives.Prepend(answer.Best!).Select(chance.Of)];
    }

    private static UnitSelection Fits(SelectionAnswer answer, UnitLoops loops, EstimateBook book, SelectionRequest request) => new(
        SelectionOutcome.Fits, answer.Best, answer.Alternatives, ChancesOf(answer, loops, book, request), [], [], loops.LeftOut,
        [Because.Of("selection-fits", Rule, ("margin", answer.Best!.Rank.Margin / 100.0)), .. LeftOutReasons(loops)]);

    private static UnitSelection NothingThere(UnitLoops loops, Reason reason) =>
        new(SelectionOutcome.NothingFits, null, [], [], [], [], loops.LeftOut, [reason, .. LeftOutReasons(loops)]);

    private static UnitSelection NothingFits(UnitCuts cuts, UnitLoops loops, SelectionProblem problem, SelectionAnswer answer, EstimateBook book, SelectionRequest request)
    {
        if (answer.Best is not { } best)
            return NothingThere(loops, Because.Of("selection-stock-too-small", Rule));
        var misses = problem.Loops.Zip(loops.Loops, best.Gaps)
            .Select(x => Misses.Of(x.First, x.Second.Loop, x.Third, problem, book))
            .OfType<LoopMiss>()
            .ToImmutableArray();
        return new UnitSelection(
            SelectionOutcome.NothingFits, best, answer.Alternatives, ChancesOf(answer, loops, book, request), [], misses, loops.LeftOut,
            [Because.Of("selection-nothing-fits", Rule, ("misses", misses.Length)), .. cuts.Withheld, .. LeftOutReasons(loops)]);
    }

    private static IEnumerable<Reason> LeftOutReasons(UnitLoops loops) =>
        loops.LeftOut.Select(l => Because.Of("selection-left-out", Rule, ("loop", l.Loop)));
}
