using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.TestKit;

namespace RebuildApi.Storage.Tests;

public class ShopRecordTests
{
    private static readonly Tax Standard = new("standard", "S", 25m);

    private static Part Part(string id, string kind = "hub-3-4", long price = 120_00) => new(
        id, "brackenmere-4", kind, "Hub", "Invented Hubs", null, price, null, 0, 3, ImmutableSortedDictionary<string, string>.Empty, null, null, false, 0);

    private static InvoiceLine Line(string id, string unit = "u1") => new(
        id, unit, "q1", "l1", new Needed("l1", "part", "Hub", "required", 1, 1, "piece", 120_00, 1, Standard, ["hub-3-4"], "hub", null, null),
        120_00, 30_00, "EUR", 2, null, "Ada", SnapshotBuilder.Noon);

    [Fact]
    public async Task A_changed_price_is_a_new_version_and_the_old_one_stays_in_the_chain()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.Put(Part("p1"), 0));
        await temp.Write(s => s.Put(Part("p1", price: 130_00), 1));

        var part = await temp.Store.Find<Part>("p1", default);

        Assert.Equal((130_00, 2), (part!.Price, part.Version));
        Assert.Equal(["part", "part"], (await temp.Store.Events(0, 10, default)).Select(e => e.Kind));
        Assert.True((await temp.Store.VerifyChain(default)).Intact);
    }

    [Fact]
    public async Task A_version_that_was_overtaken_is_refused()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.Put(Part("p1"), 0));

        await Assert.ThrowsAsync<VersionConflictException>(() => temp.Write(s => s.Put(Part("p1"), 0)));
    }

    [Fact]
    public async Task Parts_of_one_kind_are_found_page_by_page()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.Put(Part("a"), 0);
            s.Put(Part("b"), 0);
            s.Put(Part("c"), 0);
            s.Put(Part("d", "sleeve-3-4"), 0);
        });

        var hubs = new ShopFilter(About: "brackenmere-4/hub-3-4");
        var first = await temp.Store.Page<Part>(hubs, null, 2, default);
        var second = await temp.Store.Page<Part>(hubs, first.Next, 2, default);

        Assert.Equal(["a", "b"], first.Items.Select(p => p.Id));
        Assert.Equal(["c"], second.Items.Select(p => p.Id));
        Assert.Null(second.Next);
    }

    [Fact]
    public async Task Invoice_lines_are_read_on_from_where_a_reader_stopped()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Write(s => s.Put(Line("i2"), 0));
        await temp.Write(s => s.Put(Line("i1"), 0));

        var all = await temp.Store.Newer<InvoiceLine>(0, 10, default);
        var rest = await temp.Store.Newer<InvoiceLine>(all[0].Sequence, 10, default);

        Assert.Equal(["i2", "i1"], all.Select(l => l.Value.Id));
        Assert.Equal(["i1"], rest.Select(l => l.Value.Id));
    }

    [Fact]
    public async Task An_invoice_line_is_never_written_again()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Write(s => s.Put(Line("i1"), 0));

        await Assert.ThrowsAsync<DuplicateIdException>(() => temp.Write(s => s.Put(Line("i1"), null)));
        Assert.ThrowsAny<Exception>(() => temp.Meddle("DELETE FROM invoice_line"));
    }

    [Fact]
    public async Task A_line_for_a_unit_that_is_not_there_is_refused()
    {
        await using var temp = new TempStore();

        await Assert.ThrowsAsync<UnknownIdException>(() => temp.Write(s => s.Put(Line("i1", "nobody"), 0)));
    }

    [Fact]
    public async Task A_line_that_was_moved_to_another_unit_in_the_table_shows()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Write(s => s.Open(Some.Unit("u2")));
        await temp.Write(s => s.Put(Line("i1"), 0));
        temp.Meddle("DROP TRIGGER invoice_line_is_not_changed; UPDATE invoice_line SET unit = 'u2'");

        Assert.False((await temp.Store.VerifyChain(default)).Intact);
    }
}
