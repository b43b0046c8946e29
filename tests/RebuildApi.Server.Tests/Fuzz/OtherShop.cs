using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Storage;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>A second shop in the same database, that has opened a shelf and a unit to the first.</summary>
internal static class OtherShop
{
    public const string Name = "harbour";

    public static async Task Open(StoreOptions first)
    {
        await using var store = Stores.Open(first with { Shop = Name });
        await store.Write(new WriteRequest("tests", "tests", null, "", DryRun: false), session =>
        {
            var now = first.Time.GetUtcNow();
            session.Open(new Unit(PlayedShop.Unit, "SL-2", new FamilyVersion("brackenmere-4", "1.0.0"), "Nobody Invented", [], null, UnitStages.Intake, now, "Bea", 0));
            session.Put(new StockItem("shelf-1", "brackenmere-4", "third-gear", Origin.Shelf, 2, 4500, null, null, null, null, null, ImmutableSortedDictionary<string, string>.Empty, [], false, "Bea", now, 0), 0);
            session.Put(new Sharing(first.Shop, [Opening.Stock, Opening.Units], "Bea", now, 0), 0);
            return StoredAnswer.Nothing;
        }, CancellationToken.None);
    }
}
