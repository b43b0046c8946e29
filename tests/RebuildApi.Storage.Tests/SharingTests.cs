using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.TestKit;

namespace RebuildApi.Storage.Tests;

/// <summary>What a shop opens to another one that shares its database, as the stores of both keep to it.</summary>
public class SharingTests
{
    private static StockItem Stock(string id, string kind = "third-gear") => new(
        id, "brackenmere-4", kind, Origin.Shelf, 2, 45_00, null, null, null, null, "bin 7", ImmutableSortedDictionary<string, string>.Empty,
        [new StockReading("width", [Reading.Of(Length.Millimetres(30.01m), "30.01", "mm")], "mic-1")], true, "Ada", SnapshotBuilder.Noon, 0);

    private static Sharing To(string shop, params ImmutableArray<Opening> opens) => new(shop, opens, "Ada", SnapshotBuilder.Noon, 0);

    private static Task Open(TempStore temp, string shop, params ImmutableArray<Opening> opens) => temp.Write(s => s.Put(To(shop, opens), null));

    private static IStore Branch(TempStore temp, string shop = "branch") => Stores.Open(temp.Options with { Shop = shop });

    private static async Task<TempStore> Filled()
    {
        var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart();
            s.Open(Some.Unit("u2", "teardown"));
            s.Put(Stock("s1"), 0);
            s.Put(Stock("s2", "hub-3-4"), 0);
            s.Put(new Reservation("r1", "u1", "s1", 1, "Ada", SnapshotBuilder.Noon.AddDays(1), false, 0), 0);
            s.KeepJudgement("u1", "aa", "bb", "gate", """{"of":"snapshot"}"""u8.ToArray(), """{"of":"first"}"""u8.ToArray());
            s.KeepJudgement("u1", "aa", "bb", "quote", """{"of":"snapshot"}"""u8.ToArray(), """{"of":"second"}"""u8.ToArray());
        });
        return temp;
    }

    private static async Task Closed(IStore store, string shop)
    {
        foreach (var ask in new Func<Task>[]
        {
            () => store.StockOf(shop, null, null, 10, default).AsTask(),
            () => store.UnitsOf(shop, null, 10, null, default).AsTask(),
            () => store.UnitOf(shop, "u1", default).AsTask(),
        })
        {
            Assert.Equal($"No shop {shop} has opened this to yours.", (await Assert.ThrowsAsync<ShopNotOpenedException>(ask)).Message);
        }
    }

    [Fact]
    public async Task What_is_opened_is_read_by_that_shop_with_whose_it_is()
    {
        await using var temp = await Filled();
        await using var branch = Branch(temp);
        await Open(temp, "branch", Opening.Stock, Opening.Units);

        Assert.Equal("main: Stock Units", Assert.Single((await branch.OpenedShops(default)).Select(s => $"{s.Shop}: {string.Join(' ', s.Opens)}")));
        var shelf = await branch.StockOf("main", "brackenmere-4/third-gear", null, 10, default);
        Assert.Equal("width", Assert.Single(Assert.Single(shelf.Items.Items).Readings).Characteristic);
        Assert.Equal("s1", Assert.Single(shelf.Reservations).Stock);
        Assert.Equal(["u1", "u2"], (await branch.UnitsOf("main", null, 10, null, default)).Items.Select(u => u.Id));
        Assert.Equal("u2", Assert.Single((await branch.UnitsOf("main", null, 10, "teardown", default)).Items).Id);
        var first = await branch.UnitsOf("main", null, 1, null, default);
        Assert.Equal("u2", Assert.Single((await branch.UnitsOf("main", first.Next, 1, null, default)).Items).Id);
        var unit = await branch.UnitOf("main", "u1", default);
        Assert.Equal("""quote {"of":"second"}""", $"{unit!.Latest!.Kept.Purpose} {System.Text.Encoding.UTF8.GetString(unit.Latest.Body.Span)}");
        Assert.Null((await branch.UnitOf("main", "u2", default))!.Latest);
        Assert.Null(await branch.UnitOf("main", "u9", default));
    }

    [Fact]
    public async Task What_names_a_customer_does_not_come_along()
    {
        await using var temp = await Filled();
        await using var branch = Branch(temp);
        await Open(temp, "branch", Opening.Units);

        var unit = (await branch.UnitOf("main", "u1", default))!.Unit;

        Assert.Equal(("tag u1", null, null), (unit.Tag, unit.Customer, unit.Words));
        Assert.All((await branch.UnitsOf("main", null, 10, null, default)).Items, u => Assert.Equal((null, null), (u.Customer, u.Words)));
        Assert.Equal("Mrs Invented", (await temp.Store.Unit("u1", default))!.Customer);
    }

    [Fact]
    public async Task A_shop_that_opened_nothing_and_one_that_is_not_there_are_told_alike()
    {
        await using var temp = await Filled();
        await using var branch = Branch(temp);
        await Open(temp, "harbour", Opening.Stock, Opening.Units);

        await Closed(branch, "main");
        await Closed(branch, "nowhere");
        await Closed(temp.Store, "main");
        Assert.Empty(await branch.OpenedShops(default));
    }

    [Fact]
    public async Task What_is_opened_is_no_more_than_was_said_and_only_one_way()
    {
        await using var temp = await Filled();
        await using var branch = Branch(temp);
        await Open(temp, "branch", Opening.Stock);

        Assert.Equal(2, (await branch.StockOf("main", null, null, 10, default)).Items.Items.Length);
        await Assert.ThrowsAsync<ShopNotOpenedException>(() => branch.UnitsOf("main", null, 10, null, default).AsTask());
        await Closed(temp.Store, "branch");
        Assert.Null(await branch.Unit("u1", default));
        Assert.Empty((await branch.Page<StockItem>(ShopFilter.Every, null, 10, default)).Items);
        Assert.Empty(await branch.Events(0, 10, default));
    }

    [Fact]
    public async Task Taking_it_back_counts_with_the_next_question()
    {
        await using var temp = await Filled();
        await using var branch = Branch(temp);
        await Open(temp, "branch", Opening.Stock, Opening.Units);
        await branch.StockOf("main", null, null, 10, default);

        await Open(temp, "branch");

        await Closed(branch, "main");
        Assert.Empty(await branch.OpenedShops(default));
    }

    [Fact]
    public async Task It_stands_in_the_chain_and_a_row_that_says_more_is_found()
    {
        await using var temp = await Filled();
        await Open(temp, "branch", Opening.Stock);
        var entry = Assert.Single(await temp.Store.Audit(new AuditFilter("sharing"), 0, 10, default));
        Assert.Equal(("bench-1", "branch"), (entry.Event.Actor, entry.Event.Id));
        Assert.True((await temp.Store.VerifyChain(default)).Intact);

        temp.Meddle("UPDATE sharing SET about = 'stock units'");

        Assert.False((await temp.Store.VerifyChain(default)).Intact);
    }

    /// <summary>There a customer's texts stand in the body itself.</summary>
    [Fact]
    public async Task A_unit_that_only_an_earlier_edition_wrote_is_left_out_until_it_is_written_anew()
    {
        await using var temp = await Filled();
        OldEntries.Make(temp);
        await Open(temp, "branch", Opening.Units);
        await using var branch = Branch(temp);
        Assert.Empty((await branch.UnitsOf("main", null, 10, null, default)).Items);
        Assert.Null(await branch.UnitOf("main", "u1", default));

        await temp.Write(s => s.Change(s.Unit("u1")!, null));

        Assert.Equal("u1", Assert.Single((await branch.UnitsOf("main", null, 10, null, default)).Items).Id);
        Assert.Null((await branch.UnitOf("main", "u1", default))!.Latest);
    }
}
