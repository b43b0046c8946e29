using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Planning;

/// <summary>What else would do in a place, and what it would be worth to know better.</summary>
internal sealed class Alternatives(PlanModel model, PlanFinder finder, FoundPlan found)
{
    /// <summary>The next best for one place: the best plan without the fit that was taken there.</summary>
    public PlanNextBest? NextBest(int place)
    {
        if (model.Places[place].Fits.Length < 2 || model.Places[place].Series is not null)
            return null;
        var taken = found.Picks[place];
        var other = finder.Find(found.Weighing, [Only(place, o => o != taken)]);
        return other.Solution.Exists
            ? new PlanNextBest(model.Places[place].Fits[other.Picks[place]].Id, CostOf(other.Picks) - CostOf(found.Picks))
            : null;
    }

    /// <summary>
    /// Every part in doubt that came in or is in the plan: the best plan if it proves good and if it proves bad, weighed by its chance, against the best plan now
    /// (expected value of perfect information). What would change nothing is left out.
    /// </summary>
    public ImmutableArray<MeasuringValue> ToMeasure() =>
    [
        .. from place in Enumerable.Range(0, model.Places.Length)
           from fit in Enumerable.Range(0, model.Places[place].Fits.Length)
           where model.Standings[place][fit].IsOpen && (model.Places[place].Fits[fit].IsOriginal || found.Picks[place] == fit)
           let value = ValueOf(place, fit)
           where value is { Value: > 0 }
           orderby value.Value descending, value.Position, value.Index
           select value,
    ];

    private MeasuringValue? ValueOf(int place, int fit)
    {
        var of = model.Places[place];
        var chance = model.Standings[place][fit].ChanceGood;
        var risk = model.RiskOf(place, fit);
        var withIt = finder.Find(found.Weighing, [Only(place, o => o == fit)]);
        var without = finder.Find(found.Weighing, [Only(place, o => o != fit)]);
        if (!withIt.Solution.Exists)
            return null;
        long? bad = without.Solution.Exists ? CostOf(without.Picks) : null;
        var now = CostOf(found.Picks);
        var good = Math.Min(CostOf(withIt.Picks) - risk, bad ?? long.MaxValue);
        var expected = ((decimal)chance * good) + ((1 - (decimal)chance) * (bad ?? good + model.Request.Rates.ComebackCost));
        var value = (long)Math.Floor(Math.Max(0, now - expected));
        return new MeasuringValue(
            of.Position.Id, of.Index, of.Fits[fit].Id, [.. model.Standings[place][fit].Conditions.Select(c => c.Subject).Distinct()],
            chance, good, bad, value, found.Picks[place] == fit,
            Because.Of("plan-worth-measuring", of.Subject, ("value", model.Request.Said(value)), ("percent", Math.Round(100 * chance, 1))));
    }

    private PlanTable Only(int place, Func<int, bool> allowed) =>
        new("only", [place], [.. Enumerable.Range(0, model.Places[place].Fits.Length).Select(o => allowed(o) ? 0 : PlanTable.Forbidden)]);

    /// <summary>Parts, labour and expected comebacks of a plan.</summary>
    private long CostOf(ImmutableArray<int> picks) => model.BenchLabour + model.Places.Select((_, i) => model.MoneyOf(i, picks[i]) + model.RiskOf(i, picks[i])).Sum()
        + model.Tables.Select(t => t.Costs[t.Choices.Aggregate(0, (e, c) => (e * model.Places[c].Fits.Length) + picks[c])]).Sum();
}
