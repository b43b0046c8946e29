using System.Collections.Immutable;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Planning;

/// <summary>How much money, comebacks and exchanged parts count against each other: an objective as whole numbers.</summary>
/// <param name="Money">Weight of parts and labour.</param>
/// <param name="Risk">Weight of expected comebacks.</param>
/// <param name="Exchanged">Weight of a part that did not come in the unit.</param>
/// <param name="MostDays">Only what is there by then; none when time does not count.</param>
/// <param name="Steps">Weight of each whole step of expected comebacks.</param>
/// <param name="Step">How large such a step is, minor units; at least 1.</param>
internal sealed record Weighing(long Money, long Risk, long Exchanged, int? MostDays = null, long Steps = 0, long Step = 1)
{
    /// <summary>What one of what counts first weighs, and what that is in minor units or parts.</summary>
    public (long Weight, long Worth) First => Steps > 0 ? (Steps, Step) : (Math.Max(Risk, Math.Max(1, Exchanged)), 1);

    /// <summary>What an objective counts first is a digit before all else: one of it weighs more than everything that counts after it together.</summary>
    public static Weighing Of(PlanObjective objective, PlanModel model) => objective switch
    {
        PlanObjective.MostConservative => new(1, 1, 0, Steps: Above(MostMoney(model) + MostRisk(model)), Step: model.Money.NegligibleRisk),
        PlanObjective.MostOriginal => new(1, 1, Above(MostMoney(model) + MostRisk(model))),
        _ => new(1, 1, 0),
    };

    /// <summary>The problem with these weights.</summary>
    public PlanProblem Problem(PlanModel model, IEnumerable<PlanSum> more) => new(
        [.. model.Places.Select((p, i) => new PlanChoice(p.Subject, [.. p.Fits.Select((f, o) => CostOf(model, i, o))]))],
        [.. model.Tables.Select(t => Risk == 1 && Steps == 0 ? t : t with { Costs = [.. t.Costs.Select(c => c == PlanTable.Forbidden ? c : Weigh(c))] }), .. InTime(model)],
        [.. model.Sums, .. more]);

    /// <summary>What single-use parts, pieces and exchanges weigh: only what could have stayed counts as exchanged.</summary>
    private long CostOf(PlanModel model, int place, int fit)
    {
        var of = model.Places[place];
        var exchanged = !of.Fits[fit].IsOriginal && of.Series is null && !model.Book.View.Family.Kinds[of.Position.Kind].SingleUse ? Exchanged : 0;
        return checked((Money * model.MoneyOf(place, fit)) + Weigh(model.RiskOf(place, fit)) + exchanged);
    }

    private long Weigh(long risk) => checked((Risk * risk) + (Steps * (risk / Step)));

    private IEnumerable<PlanTable> InTime(PlanModel model) => MostDays is not { } days ? [] :
        model.Places.Select((p, i) => new PlanTable("days", [i], [.. p.Fits.Select(f => f.LeadDays <= days ? 0 : PlanTable.Forbidden)]));

    private static long Above(long most) => most + 1;

    private static long MostMoney(PlanModel model) => model.Places.Select((p, i) => p.Fits.Select((_, o) => model.MoneyOf(i, o)).Max()).Sum();

    private static long MostRisk(PlanModel model) =>
        model.Places.Select((p, i) => p.Fits.Select((_, o) => model.RiskOf(i, o)).Max()).Sum()
        + model.Tables.Sum(t => t.Costs.Where(c => c != PlanTable.Forbidden).DefaultIfEmpty().Max());
}
