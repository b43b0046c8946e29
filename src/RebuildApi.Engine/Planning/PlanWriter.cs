using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Planning;

/// <summary>Writes a plan out of picks that stand.</summary>
internal sealed class PlanWriter(PlanModel model)
{
    private const string Rule = "plan";

    public Plan Write(FoundPlan found, PlanObjective objective, Func<int, PlanNextBest?> nextBest)
    {
        var judged = JudgedPlan.Of(model, found.Picks);
        var lines = model.Places.Select((p, i) => LineOf(p, i, found.Picks[i], nextBest(i))).ToImmutableArray();
        var work = Work(found.Picks);
        var cost = new PlanCost(
            model.Places.Select((p, i) => model.Money.PriceOf(p.Fits[found.Picks[i]])).Sum(),
            model.Money.LabourOf(work),
            lines.Sum(l => l.Comeback) + PairingCost(found.Picks),
            lines.Any(l => l.Price is null));
        return new Plan(
            objective, lines, work, cost, work.Sum(w => w.Minutes), lines.Max(l => l.LeadDays),
            [.. PartConditions(found.Picks), .. Conditions(judged)],
            [.. judged.Parts.Select(p => new PlanVerdict(p.Position, p.Index, p.Outcome, p.Verdicts))],
            [.. judged.Clearances.Select(Written)],
            [.. judged.Pairings.Select(p => new PlanPairing(p.Rule, p.Outcome, p.Severity, p.Reasons))],
            judged.Snapshot,
            GapOf(found),
            [Because.Of(found.Solution.Status == SolveStatus.Proven ? "plan-proven" : "plan-bounded", Rule, ("objective", objective), ("gap", objective == PlanObjective.MostOriginal ? GapOf(found) : model.Request.Said(GapOf(found))))]);
    }

    /// <summary>In what the objective counts first: a gap of less than one of it is still one, for it is not proven.</summary>
    private static long GapOf(FoundPlan found)
    {
        var (weight, worth) = found.Weighing.First;
        return (found.Solution.Gap + weight - 1) / weight * worth;
    }

    /// <summary>The family's bench work that every rebuild needs, and the work on single parts, in the order in which the gearbox comes apart.</summary>
    private ImmutableArray<PlanWork> Work(ImmutableArray<int> picks) =>
    [
        .. model.Places.SelectMany((p, i) => p.Fits[picks[i]].Work),
        .. model.BenchWork.Select(o => new PlanWork(o.Id, null, 1, o.Minutes, null, null, o.RemeasureGate, o.Cautions)),
    ];

    private PlanLine LineOf(PlanPlace place, int at, int pick, PlanNextBest? nextBest)
    {
        var fit = place.Fits[pick];
        return new PlanLine(
            place.Position.Id, place.Index, fit.Id, fit.Source,
            fit.Source switch { PartSource.Found => Disposition.Reuse, PartSource.Rework => Disposition.Rework, _ => Disposition.Replace },
            [.. fit.Parts.Select(p => p.Component)], fit.Members,
            model.Standings[at][pick].Outcome, fit.Price, model.Money.LabourOf(fit.Work), model.RiskOf(at, pick), fit.LeadDays, fit.Vendor, fit.IsInHouse,
            nextBest, [.. Reasons(place, at, fit, pick)]);
    }

    private IEnumerable<Reason> Reasons(PlanPlace place, int at, Fit fit, int pick)
    {
        yield return Because.Of("plan-" + fit.Source switch
        {
            PartSource.Found => "keeps",
            PartSource.Rework => "reworks",
            PartSource.ToBeBought => "buys-unlisted",
            PartSource.Catalogue => "buys",
            _ => "takes",
        }, place.Subject, ("candidate", fit.Id), ("vendor", fit.Vendor ?? "-"));
        if (!fit.IsOriginal && place.Series is null && place.Fits.FindIndex(f => f.Source == PartSource.Found) is >= 0 and var own)
        {
            foreach (var reason in WhyNot(place, at, own))
                yield return reason;
        }

        if (fit.Price is null)
            yield return Because.Of("plan-price-unknown", place.Subject);
    }

    /// <summary>Why the part found does not go back: it does not conform, or something beside it costs less.</summary>
    private IEnumerable<Reason> WhyNot(PlanPlace place, int at, int own) => model.Standings[at][own].Outcome == Outcome.Nonconforming
        ? model.Standings[at][own].Verdicts.Where(v => v.Outcome == Outcome.Nonconforming).SelectMany(v => v.Reasons).DefaultIfEmpty(Because.Of("plan-found-is-bad", place.Subject))
        : [Because.Of("plan-found-does-not-fit", place.Subject)];

    private long PairingCost(ImmutableArray<int> picks) => model.Tables
        .Select(t => t.Costs[t.Choices.Aggregate(0, (e, c) => (e * model.Places[c].Fits.Length) + picks[c])]).Sum();

    private IEnumerable<PlanCondition> PartConditions(ImmutableArray<int> picks) =>
        model.Places.SelectMany((p, i) => model.Standings[i][picks[i]].Conditions.Select((c, n) => new PlanCondition(c.Code, c.Subject, n == 0 ? model.RiskOf(i, picks[i]) : 0, c.Reason)));

    private IEnumerable<PlanCondition> Conditions(JudgedPlan judged)
    {
        foreach (var clearance in judged.Clearances.Where(c => c.Verdict.Outcome != Outcome.Conforming))
            yield return new PlanCondition("clearance-open", clearance.Verdict.Subject, 0, Because.Of("plan-clearance-open", clearance.Verdict.Subject));
        foreach (var pairing in judged.Pairings.Where(p => p.Outcome is Compatibility.NotAssessed or Compatibility.Conditional))
        {
            var isOpen = pairing.Outcome == Compatibility.NotAssessed;
            var cost = model.Pairings.CostOf(pairing.Outcome);
            yield return new PlanCondition(
                isOpen ? "pairing-open" : "pairing-condition", pairing.Rule, cost == PlanTable.Forbidden ? 0 : cost,
                Because.Of(isOpen ? "plan-pairing-open" : "plan-pairing-condition", pairing.Rule, ("settles", string.Join(", ", pairing.Settles))));
        }
    }

    private static PlanClearance Written(Clearances.ClearanceAnswer clearance) => new(
        clearance.Verdict.Subject, clearance.Verdict.Outcome, (clearance.Combined.Value as Exact)?.Value, clearance.Verdict.Against, clearance.Verdict.Probability);
}

/// <summary>Finding by index in an immutable array.</summary>
internal static class FitArray
{
    public static int FindIndex(this ImmutableArray<Fit> fits, Predicate<Fit> match)
    {
        for (var i = 0; i < fits.Length; i++)
        {
            if (match(fits[i]))
                return i;
        }

        return -1;
    }
}
