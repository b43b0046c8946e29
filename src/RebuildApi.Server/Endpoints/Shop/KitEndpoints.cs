using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>What to order and take from the shelf so that a plan can be built, and which unit gets what.</summary>
public static class KitEndpoints
{
    private static readonly QueryOption Plan = new("plan", "The plan; the one that was chosen, or else the newest, when none is named.");

    /// <summary>The routes.</summary>
    public static void MapKit(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("plans");
        group.Read("/units/{unit}/kit", Kit, "getKit", "What is needed to build the plan?",
                "What to take from the shelf, what to order from whom with alternatives, the work in order with its cautions and gates, and the assembly sheet with the ring or shim for each place.")
            .WithMetadata(Plan).InUnits().Fails(Problems.UnknownUnit, Problems.UnknownPlan, Problems.RulesUnavailable);
        group.Read("/units/{unit}/kit.xlsx", Workbook, "getKitWorkbook", "Get the kit as a workbook",
                "What to order, what to take from the shelf, what to ask for, the work, the assembly and the conditions, each on a sheet of its own.")
            .WithMetadata(Plan).InUnits().Fails(Problems.UnknownUnit, Problems.UnknownPlan, Problems.RulesUnavailable);
        group.List<ListOf<OrderLineWire>>("/units/{unit}/kit/orders", Orders, "listOrderLines", "List the order lines of a kit", "The same lines as in the kit, as a table to send to a vendor.")
            .Takes(Plan).Fails(Problems.UnknownUnit, Problems.UnknownPlan, Problems.RulesUnavailable);
        group.WorkOut("/allocations", Allocate, "allocateShelf", "What can the shelf finish?",
                "Which part of the shelf goes to which unit, so that the most units with a chosen plan are completed, and of all such ways the cheapest; what the others lack, and which single purchase would complete most. Sets stay whole, reservations are respected. Nothing is stored.")
            .Fails(Problems.InvalidContent, Problems.RulesUnavailable)
            .Example("""{ "without": ["shelf-99"] }""");
    }

    private static async Task<Found<KitWire>> Kit(string unit, HttpContext http, Asked asked, Bench bench, Judging judging, PlanDesk plans, IStore store, CancellationToken cancellation) =>
        new(await Of(unit, http, asked, bench, judging, plans, store, cancellation));

    private static async Task<Workbook> Workbook(
        string unit, HttpContext http, Asked asked, Bench bench, Judging judging, PlanDesk plans, IStore store, CancellationToken cancellation) =>
        KitWorkbook.Of(await Of(unit, http, asked, bench, judging, plans, store, cancellation));

    private static async Task<KitWire> Of(string unit, HttpContext http, Asked asked, Bench bench, Judging judging, PlanDesk plans, IStore store, CancellationToken cancellation)
    {
        var (sheet, plan) = await Sheet(unit, http, asked, bench, judging, store, cancellation);
        return sheet.Of(
            await store.All<Part>(ShopFilter.Every, cancellation), await store.All<StockItem>(ShopFilter.Every, cancellation),
            await store.All<Reservation>(ShopFilter.Every, cancellation), await store.Rates(cancellation), bench.Time.GetUtcNow(), await plans.StillStands(plan, cancellation));
    }

    private static async Task<Listing<OrderLineWire, ListOf<OrderLineWire>>> Orders(
        string unit, HttpContext http, Asked asked, Bench bench, Judging judging, IStore store, CancellationToken cancellation)
    {
        // A unit without a plan has nothing to order yet; a plan that is named must be there.
        var isPlanned = QueryText.Of(http, Plan.Name) is not null || await Chosen(unit, store, cancellation) is not null;
        await bench.File(unit, cancellation);
        var lines = isPlanned
            ? (await Sheet(unit, http, asked, bench, judging, store, cancellation)).Sheet.Orders(await store.All<Part>(ShopFilter.Every, cancellation), await store.Rates(cancellation))
            : [];
        return new(PagesOf.Whole([.. lines.OrderBy(l => l.Vendor, StringComparer.Ordinal)], l => l.Part), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<(KitSheet Sheet, KeptPlan Plan)> Sheet(
        string unit, HttpContext http, Asked asked, Bench bench, Judging judging, IStore store, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        var id = QueryText.Of(http, Plan.Name) ?? await Chosen(unit, store, cancellation);
        var plan = id is null ? null : await store.Find<KeptPlan>(id, cancellation);
        return plan is not null && plan.Unit == unit
            ? (new KitSheet(plan, judging.View(file).Family, asked.Show), plan)
            : throw new ProblemException(Problems.UnknownPlan, "The unit has no such plan.");
    }

    private static async Task<string?> Chosen(string unit, IStore store, CancellationToken cancellation) =>
        (await store.Newest<PlanChoice>(new ShopFilter(unit), cancellation))?.Plan
        ?? (await store.All<KeptPlan>(new ShopFilter(unit), cancellation)).LastOrDefault(p => !p.Lines.IsEmpty)?.Id;

    private static async Task<Found<AllocationWire>> Allocate(Body<AllocationRequest> body, ShelfAllocation allocation, CancellationToken cancellation) =>
        new(await allocation.Of(body.Value, cancellation));
}
