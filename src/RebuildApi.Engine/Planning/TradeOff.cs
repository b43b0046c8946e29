using System.Collections.Immutable;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Planning;

/// <summary>
/// The front between what a plan costs (parts and labour) and what it risks (expected comebacks): the two ends, then between each two neighbours the
/// plan that lies farthest below the line through them, until none does. Each is proven the best for its weights.
/// </summary>
internal sealed class TradeOff(PlanModel model, PlanFinder finder)
{
    /// <summary>At most so many plans, the cheapest first.</summary>
    public ImmutableArray<FoundPlan> Front(int most)
    {
        var cheapest = Known(finder.Find(Digits(moneyFirst: true), []));
        var surest = Known(finder.Find(Digits(moneyFirst: false), []));
        var front = new List<(FoundPlan Plan, long Money, long Risk)>();
        front.AddRange(new[] { cheapest, surest }.OfType<(FoundPlan Plan, long Money, long Risk)>().DistinctBy(p => (p.Money, p.Risk)));
        for (var i = 0; i + 1 < front.Count && front.Count < most;)
        {
            var (a, b) = (front[i], front[i + 1]);
            var weights = new Weighing(Math.Max(1, a.Risk - b.Risk), Math.Max(1, b.Money - a.Money), 0);
            if (Known(finder.Find(weights, [])) is { } between && Weigh(between, weights) < Weigh(a, weights))
                front.Insert(i + 1, between);
            else
                i++;
        }

        return [.. front.Select(p => p.Plan)];
    }

    private static long Weigh((FoundPlan Plan, long Money, long Risk) plan, Weighing weights) => checked((plan.Money * weights.Money) + (plan.Risk * weights.Risk));

    private (FoundPlan Plan, long Money, long Risk)? Known(FoundPlan found) => found.Solution.Exists
        ? (found,
            model.Places.Select((_, i) => model.MoneyOf(i, found.Picks[i])).Sum(),
            model.Places.Select((_, i) => model.RiskOf(i, found.Picks[i])).Sum() + model.Tables.Select(t => t.Costs[t.Choices.Aggregate(0, (e, c) => (e * model.Places[c].Fits.Length) + found.Picks[c])]).Sum())
        : null;

    private Weighing Digits(bool moneyFirst)
    {
        var most = moneyFirst
            ? model.Places.Select((p, i) => p.Fits.Select((_, o) => model.RiskOf(i, o)).Max()).Sum() + model.Tables.Sum(t => t.Costs.Where(c => c != PlanTable.Forbidden).DefaultIfEmpty().Max())
            : model.Places.Select((p, i) => p.Fits.Select((_, o) => model.MoneyOf(i, o)).Max()).Sum();
        return moneyFirst ? new Weighing(most + 1, 1, 0) : new Weighing(1, most + 1, 0);
    }
}
