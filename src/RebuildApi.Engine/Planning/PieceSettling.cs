using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Selection;

namespace RebuildApi.Engine.Planning;

/// <summary>
/// Of pieces that cost no more than those of the plan, takes the ones with which the clearances lie surest in their windows: the parts stay, and so does
/// the cost.
/// </summary>
internal static class PieceSettling
{
    public static ImmutableArray<int> Settle(PlanModel model, PlanProblem problem, PlanSolution solution)
    {
        var pieces = Enumerable.Range(0, model.Places.Length).Where(p => model.Places[p].Series is not null).ToHashSet();
        var choices = pieces.ToDictionary(p => p, p => Equal(model, p, solution.Picks[p]));
        var loops = model.Book.View.Family.Family.Loops.Select(l => LoopOf(l, model, solution.Picks, pieces)).OfType<SelectionLoop>().ToImmutableArray();
        var used = loops.SelectMany(l => l.Terms).Select(t => t.Choice).ToHashSet(StringComparer.Ordinal);
        var open = pieces.Where(p => used.Contains(model.Places[p].Position.Id)).Order().ToArray();
        if (loops.IsEmpty || open.All(p => choices[p].Length < 2))
            return solution.Picks;
        var best = SelectionSolver.Solve(new SelectionProblem(loops, [.. open.Select(p => new SelectionChoice(
            model.Places[p].Position.Id, [.. choices[p].Select(o => new SelectionOption([], ThicknessOf(model, p, o), 0))]))])).Best;
        if (best is null)
            return solution.Picks;
        var picks = solution.Picks.ToBuilder();
        foreach (var (place, pick) in open.Zip(best.Picks))
            picks[place] = choices[place].First(o => ThicknessOf(model, place, o) == pick.Option.Amount);
        var settled = picks.ToImmutable();
        return BranchAndBound.Cost(problem, settled) is { } cost && cost <= solution.Cost ? settled : solution.Picks;
    }

    /// <summary>The pieces that cost no more and are there no later; the one taken among them, and only those of known thickness.</summary>
    private static int[] Equal(PlanModel model, int place, int taken)
    {
        var fits = model.Places[place].Fits;
        return [.. Enumerable.Range(0, fits.Length)
            .Where(o => o == taken || (model.MoneyOf(place, o) <= model.MoneyOf(place, taken) && model.RiskOf(place, o) <= model.RiskOf(place, taken) && fits[o].LeadDays <= fits[taken].LeadDays))
            .Where(o => AmountOf(model, place, o) is not null)];
    }

    private static Length ThicknessOf(PlanModel model, int place, int fit) => new(AmountOf(model, place, fit)!.Value);

    /// <summary>Thickness in nanometres, from the first sum that the piece is in.</summary>
    private static long? AmountOf(PlanModel model, int place, int fit)
    {
        var loop = model.Book.View.Family.Family.Loops.First(l => l.Terms.Any(t => t.Of is OfSeries s && s.Position == model.Places[place].Position.Id));
        var term = loop.Terms.First(t => t.Of is OfSeries s && s.Position == model.Places[place].Position.Id);
        return PlacedPieces.At((OfSeries)term.Of, model.BookOf(place, model.Places[place].Fits[fit])).Thickness.Value is Exact { Value: var thickness } ? thickness.Nanometres : null;
    }

    private static SelectionLoop? LoopOf(ClearanceLoop loop, PlanModel model, ImmutableArray<int> picks, HashSet<int> pieces)
    {
        var name = $"clearance:{loop.Id}";
        if (!loop.Terms.Any(t => t.Of is OfSeries) || model.Sums.FirstOrDefault(s => s.Demand == name) is not { } sum)
            return null;
        var scale = loop.Terms.Aggregate(1L, (lcm, t) => lcm / Gcd(lcm, t.Denominator) * t.Denominator);
        var parts = sum.Terms.Where(t => !pieces.Contains(t.Choice)).ToArray();
        if (sum.Terms.Any(t => t.Amounts[picks[t.Choice]] is null))
            return null;
        var u = Math.Sqrt(sum.Terms.Sum(t => t.Variances[picks[t.Choice]])) / scale;
        var guard = (long)Math.Ceiling(sum.Guard * u);
        return new SelectionLoop(
            loop.Id, new Length(parts.Sum(t => t.Amounts[picks[t.Choice]]!.Value) / scale), u * 1e-9,
            sum.Low == long.MinValue ? null : new Length((sum.Low / scale) + guard), sum.High == long.MaxValue ? null : new Length((sum.High / scale) - guard),
            TargetOf(loop, sum, scale, model),
            [.. loop.Terms.Where(t => t.Of is OfSeries).Select(t => new SelectionTerm(((OfSeries)t.Of).Position, t.Numerator, t.Denominator))]);
    }

    /// <summary>The wanted gap, less the fixed lengths that the sum's ends are without.</summary>
    private static Length TargetOf(ClearanceLoop loop, PlanSum sum, long scale, PlanModel model)
    {
        var window = WindowOf.Loop(loop, model.Book.View.Snapshot.Policy);
        var moved = window.Low is Exact low ? (sum.Low / scale) - low.Value.Nanometres : (sum.High / scale) - ((Exact)window.High!).Value.Nanometres;
        return new Length(WindowOf.Target(window).Nanometres + moved);
    }

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}
