using System.Collections.Immutable;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>The best complete set of decisions for a unit.</summary>
public static class PlanEndpoints
{
    private static readonly QueryOption Against = new("against", "Another plan of the unit: say where the two differ.");

    /// <summary>The routes.</summary>
    public static void MapPlans(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("plans");
        group.Make("/units/{unit}/plans", Make, "makePlan", "What is the best complete set of decisions?",
                "For every place the part found, its reworks, the price list and the shelf; every verdict, pairing, clearance, ring and cut at once; the best by the objective, proven. When there is no plan: what stands in the way, and what would open it. With dryRun it is a what-if; candidates adds parts that are only spoken of.")
            .Fails(Problems.UnknownUnit, Problems.RulesUnavailable, Problems.InvalidContent, Problems.NotComputable)
            .Example("""{ "person": "Ada", "objective": "least-cost" }""");
        group.List<ListOf<PlanRowWire>>("/units/{unit}/plans", List, "listPlans", "Compare the plans of a unit", "One row for each plan: cost, time, how many parts go back, how much is still to be read.")
            .Fails(Problems.UnknownUnit);
        group.Read("/units/{unit}/plans/{plan}", Get, "getPlan", "Get a plan", "As it was answered; whether it still stands; and, when another is named, where they differ.")
            .WithMetadata(Against).Fails(Problems.UnknownUnit, Problems.UnknownPlan, Problems.RulesUnavailable);
        group.Read("/units/{unit}/plans/{plan}/snapshot", Snapshot, "getPlanSnapshot", "Get the unit as a plan would have it",
                "Everything known of the unit with each part of the plan in its place, as POST /v1/judgements takes it: so that anyone can work the plan's verdicts out again.")
            .Fails(Problems.UnknownUnit, Problems.UnknownPlan).Produces<object>(200, "application/json");
        group.Make("/units/{unit}/plans/{plan}/approvals", Choose, "choosePlan", "Choose a plan to be built",
                "A person of the shop signs for it. Kit, reservations and quote go by it from then on; the newest choice counts.")
            .Needs(Scope.Office).Fails(Problems.UnknownUnit, Problems.UnknownPlan, Problems.InvalidContent)
            .Example("""{ "person": "Ada", "reason": "The customer wants it back this week." }""");
        group.WorkOut("/units/{unit}/trade-off", TradeOff, "tradeOff", "What does more certainty cost?",
                "A few plans between the cheapest and the surest, none of which is beaten in both. Nothing is stored.")
            .Fails(Problems.UnknownUnit, Problems.RulesUnavailable)
            .Example("""{ "most": 3 }""");
    }

    private static async Task<CreatedAnswer<PlanWire>> Make(
        string unit, Body<PlanAskRequest> body, PlanDesk plans, IStore store, CancellationToken cancellation)
    {
        var plan = await plans.Plan(unit, body.Value, cancellation);
        var answer = await store.Write(body.Request, session =>
        {
            session.Put(plan, 0);
            return Answer.Created($"/v1/units/{unit}/plans/{plan.Id}", PlanDesk.Read(plan));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Listing<PlanRowWire, ListOf<PlanRowWire>>> List(string unit, Bench bench, IStore store, CancellationToken cancellation)
    {
        await bench.File(unit, cancellation);
        var chosen = (await store.Newest<PlanChoice>(new ShopFilter(unit), cancellation))?.Plan;
        PageReader<KeptPlan> pages = (after, limit, stop) => store.Page<KeptPlan>(new ShopFilter(unit), after, limit, stop);
        return new(pages.Select(p => PlanRowWire.From(PlanDesk.Read(p), p.Id == chosen)), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<Found<PlanWire>> Get(string unit, string plan, HttpContext http, PlanDesk plans, Bench bench, IStore store, CancellationToken cancellation)
    {
        await bench.File(unit, cancellation);
        var kept = await Of(unit, plan, store, cancellation);
        var shown = PlanDesk.Read(kept) with { StillStands = await plans.StillStands(kept, cancellation) };
        return new(QueryText.Of(http, Against.Name) is { } other
            ? shown with { Against = Differences(shown, PlanDesk.Read(await Of(unit, other, store, cancellation))) }
            : shown);
    }

    private static async Task<IResult> Snapshot(string unit, string plan, Bench bench, IStore store, CancellationToken cancellation)
    {
        await bench.File(unit, cancellation);
        return (await Of(unit, plan, store, cancellation)).Snapshot is { } kept
            ? TypedResults.Text(kept, "application/json; charset=utf-8")
            : throw new ProblemException(Problems.UnknownPlan, "This answer has no plan in it, or was kept before plans kept the unit as it would be.");
    }

    private static async ValueTask<KeptPlan> Of(string unit, string plan, IStore store, CancellationToken cancellation) =>
        await store.Find<KeptPlan>(plan, cancellation) is { } kept && kept.Unit == unit ? kept : throw Unknown();

    private static ImmutableArray<PlanDifferenceWire> Differences(PlanWire plan, PlanWire other)
    {
        var (here, there) = (ByPlace(plan), ByPlace(other));
        return
        [
            .. plan.Lines.Concat(other.Lines).Select(l => l.Position).Distinct()
                .Select(p => new PlanDifferenceWire(p, here.GetValueOrDefault(p), there.GetValueOrDefault(p))).Where(d => d.This != d.Other),
        ];
    }

    private static Dictionary<string, string> ByPlace(PlanWire plan) => plan.Lines.ToDictionary(l => l.Position, l => l.Candidate, StringComparer.Ordinal);

    private static async Task<CreatedAnswer<PlanChoiceWire>> Choose(
        string unit, string plan, Body<PlanChoiceRequest> body, Bench bench, IStore store, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            _ = session.Unit(unit) ?? throw Bench.Unknown();
            var kept = session.Find<KeptPlan>(plan) is { } found && found.Unit == unit ? found : throw Unknown();
            if (kept.Lines.IsEmpty)
                throw new ProblemException(Problems.InvalidContent, "This answer says that there is no plan: there is nothing to build.");
            var choice = session.Put(new PlanChoice(bench.Ids.Next(), unit, plan, body.Value.Person, body.Value.Reason, bench.Time.GetUtcNow()), 0);
            return Answer.Created($"/v1/units/{unit}/plans/{plan}", new PlanChoiceWire(choice.Id, plan, choice.Person, choice.Reason, choice.Time));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Found<TradeOffWire>> TradeOff(string unit, Body<TradeOffRequest> body, PlanDesk plans, CancellationToken cancellation) =>
        new(await plans.TradeOff(unit, body.Value.Most, cancellation));

    private static ProblemException Unknown() => new(Problems.UnknownPlan, "The unit has no plan of this id.");
}
