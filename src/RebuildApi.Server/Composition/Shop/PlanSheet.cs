using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Writes a plan down as it is answered and kept: money in the shop's currency, lengths in millimetres, reasons in words.</summary>
public sealed class PlanSheet(FamilyIndex family, Rates rates, Display show)
{
    /// <summary>A whole answer.</summary>
    public PlanWire Of(PlanAnswer answer, string objective, string id, string unit, string person, DateTimeOffset time, string inputs, string offers) => new(
        id, unit, objective, Kebab.Of(answer.Status), Money(answer.Plan?.Gap ?? 0), answer.Plan is { } p ? Cost(p.Cost) : null, answer.Plan?.Minutes ?? 0,
        answer.Plan?.ReadyInDays ?? 0,
        [.. (answer.Plan?.Lines ?? []).Select(Line)],
        [.. (answer.Plan?.Work ?? []).Select(Work)],
        [.. (answer.Plan?.Conditions ?? []).Select(c => new PlanConditionWire(c.Code, c.Subject, Money(c.Comeback), family.Say(c.Reason)))],
        [.. (answer.Plan?.Clearances ?? []).Select(Clearance)],
        [.. (answer.Plan?.Pairings ?? []).Where(x => x.Outcome != Compatibility.Compatible).Select(x => new PlanPairingWire(x.Rule, Kebab.Of(x.Outcome), Reasons(x.Reasons)))],
        [.. answer.ToMeasure.Select(m => new ToMeasureWire(
            Subjects.Of(m.Position, m.Index), m.Candidate, m.Read, m.ChanceGood, Money(m.CostIfGood), m.CostIfBad is { } bad ? Money(bad) : null, Money(m.Value), m.IsInPlan))],
        [.. answer.Conflicts.Select(c => new PlanConflictWire(
            [.. c.Demands.Select(d => new PlanDemandWire(d.Id, Kebab.Of(d.Kind), family.Say(d.Reason)))], family.Say(c.Reason), c.IsSmallest))],
        [.. answer.Unlocks.Select(u => new PlanUnlockWire(Kebab.Of(u.What), u.Subject, Money(u.Cost), family.Say(u.Reason))
        {
            Reading = u.Reading is { } reading ? UnlockReadingWire.From(u.Subject, reading) : null,
        })],
        Reasons([.. answer.Reasons, .. answer.Plan?.Reasons ?? []]), person, time, inputs, offers, RuleWire.From(family.IdentityOf("plan")), Cautions.Of(family, show));

    private PlanLineWire Line(PlanLine l) => new(
        Subjects.Of(l.Position, l.Index), show.Words(family.Positions[l.Position].Name), l.Candidate, Kebab.Of(l.Source), Kebab.Of(l.Disposition), l.Members,
        Kebab.Of(l.Outcome), l.Price is { } price ? Money(price) : null, Money(l.Labour), l.LeadDays, l.Vendor,
        l.NextBest is { } next ? new NextBestWire(next.Candidate, Money(next.Extra)) : null, Reasons(l.Reasons));

    private PlanWorkWire Work(PlanWork w) => new(
        w.Operation, show.Words(family.Operations[w.Operation].Name), w.Position is { } position ? Subjects.Of(position, w.Index) : null, w.Minutes, show.LengthMaybe(w.Change),
        w.Datum, w.RemeasureGate, [.. w.Cautions.Select(show.Words)]);

    private PlanClearanceWire Clearance(PlanClearance c) => new(
        c.Loop, show.Words(family.Loops[c.Loop].Name), Kebab.Of(c.Outcome), show.LengthMaybe(c.Gap), c.Against is { } against ? LimitsWire.From(against, show) : null,
        Numbers.Finite(c.Probability));

    private PlanCostWire Cost(PlanCost c) => new(Money(c.Parts), Money(c.Labour), Money(c.Comeback), Money(c.Total), c.HasUnknownPrices);

    private MoneyWire Money(long minor) => MoneyWire.Of(minor, rates);

    private ImmutableArray<ReasonWire> Reasons(ImmutableArray<Reason> reasons) => [.. reasons.Select(r => ReasonWire.From(r, family))];
}
