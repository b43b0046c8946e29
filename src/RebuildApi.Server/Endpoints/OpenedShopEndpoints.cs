using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Sharing;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>What other shops that share the database have opened to this one: all of it under the shop's name, all of it only read.</summary>
public static class OpenedShopEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapOpenedShops(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("branches");
        group.List<ListOf<OpenedShopWire>>("/shops", Shops, "listShops", "List the shops that opened something to yours", "Each with what it has opened. What lies under its name can be read, and nothing there can be changed.");
        group.List<ListOf<OpenedStockWire>>("/shops/{shop}/opened/stock", Stock, "listStockOfShop", "List another shop's shelf",
                "What lies there with what was read of it, and how much of it is free: to ask for a part before ordering one. Prices, bins and people are not told.")
            .Takes(PartEndpoints.Kind).Fails(Problems.UnknownShop);
        group.List<ListOf<OpenedUnitWire>>("/shops/{shop}/opened/units", Units, "listUnitsOfShop", "List another shop's units",
                "In the order of their ids, without what names a customer. A unit that no edition with texts kept apart has written yet is left out.")
            .Takes(UnitEndpoints.Stage).Fails(Problems.UnknownShop);
        group.Read("/shops/{shop}/opened/units/{unit}", Unit, "getUnitOfShop", "Get another shop's unit", "One unit with the judgement that was last kept of it, without what names a customer.")
            .Fails(Problems.UnknownShop, Problems.UnknownUnit);
    }

    private static async Task<Listing<OpenedShopWire, ListOf<OpenedShopWire>>> Shops(IStore store, CancellationToken cancellation)
    {
        var shops = await store.OpenedShops(cancellation);
        return new(PagesOf.Whole(shops, s => s.Shop).Select(OpenedShopWire.From), (items, next, asOf) => new(items, next, asOf));
    }

    private static Listing<OpenedStockWire, ListOf<OpenedStockWire>> Stock(string shop, HttpContext http, Asked asked, IStore store, TimeProvider time)
    {
        var kind = QueryText.Of(http, PartEndpoints.Kind.Name);
        PageReader<OpenedStockWire> pages = async (after, limit, cancellation) =>
        {
            var found = await store.StockOf(shop, kind, after, limit, cancellation);
            var reserved = Reserved.Of(found.Reservations, time.GetUtcNow());
            return new([.. found.Items.Items.Select(s => OpenedStockWire.From(shop, s, reserved.Count(s.Id), asked.Show))], found.Items.Next);
        };
        return new(pages, (items, next, asOf) => new(items, next, asOf));
    }

    private static Listing<OpenedUnitWire, ListOf<OpenedUnitWire>> Units(string shop, HttpContext http, IStore store)
    {
        var stage = QueryText.Of(http, UnitEndpoints.Stage.Name);
        PageReader<Unit> pages = (after, limit, cancellation) => store.UnitsOf(shop, after, limit, stage, cancellation);
        return new(pages.Select(u => OpenedUnitWire.From(shop, u)), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<Found<OpenedUnitFileWire>> Unit(string shop, string unit, IStore store, CancellationToken cancellation) =>
        new(OpenedUnitFileWire.From(shop, await store.UnitOf(shop, unit, cancellation) ?? throw new ProblemException(Problems.UnknownUnit, "No unit of this id was taken in there.")));
}
