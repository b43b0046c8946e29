using System.Data.Common;
using RebuildApi.Contracts;

namespace RebuildApi.Storage.Tests;

public sealed class StageTests
{
    [Fact]
    public async Task A_unit_that_an_earlier_edition_left_at_the_inspection_is_at_the_teardown_and_the_chain_still_says_what_was_written()
    {
        await using var temp = new TempStore();
        await using (var older = temp.OpenOlder(upTo: 5))
        {
        }

        OldEntries.Open(temp, Some.Unit(stage: "inspection") with { Version = 1 });

        Assert.Equal("teardown", (await temp.Store.Unit("u1", default))!.Stage);
        Assert.Single((await temp.Store.Units(null, 10, "teardown", default)).Items);
        Assert.True((await temp.Store.VerifyChain(default)).Intact);
        Assert.Contains("\"inspection\"", Assert.Single(await temp.Store.History("u1", 0, 10, default)).Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_recorded_on_the_way_is_never_changed_and_the_chain_covers_it()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.Open(Some.Unit()));
        await temp.Write(s => s.Put(new StagePassing("p1", "u1", "intake", "pre-strip", "Ada", temp.Time.GetUtcNow(), null, null, [new("complaint", "met", null, null, [])]), null));
        await temp.Write(s => s.Put(new SignOff("s1", "u1", "interlock", true, "Ada", "b", temp.Time.GetUtcNow(), null, "aa"), null));
        Assert.ThrowsAny<DbException>(() => temp.Meddle("UPDATE stage SET about = 'handed-over'"));
        Assert.ThrowsAny<DbException>(() => temp.Meddle("DELETE FROM sign_off"));
        temp.Meddle("DROP TRIGGER stage_is_not_changed; UPDATE stage SET about = 'handed-over'");
        Assert.False((await temp.Store.VerifyChain(default)).Intact);
    }

    [Fact]
    public async Task One_part_is_followed_over_units_with_since_when_and_until_when()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.Open(Some.Unit()));
        await temp.Write(s => s.Open(Some.Unit("u2")));
        var part = new Component("c1", 1, "gear", Origin.Unit, new Dictionary<string, string>(), null);
        var place = new Placement("third-gear", 1, "c1", PlacementRole.Found, Facing.Unspecified, null);
        await temp.Write(s => s.Add("u1", part));
        await temp.Write(s => s.Place("u1", place));
        temp.Time.Advance(TimeSpan.FromHours(1));
        var left = temp.Time.GetUtcNow();
        await temp.Write(s => s.Vacate("u1", "third-gear", 1, PlacementRole.Found));
        await temp.Write(s => s.Place("u2", place with { Role = PlacementRole.Fitted }));
        var file = await temp.Store.Part("c1", default);
        Assert.Equal([("u1", left), ("u2", null)], file!.Places.Select(p => (p.Unit, p.Until)));
        Assert.Null(await temp.Store.Part("nobody", default));
        if (temp.Options.Database is null)
            Assert.Contains(temp.Plan("SELECT 1 FROM entry e WHERE e.shop = 's' AND e.kind = 'placement' AND json_extract(e.body, '$.component') = 'c1' ORDER BY e.sequence"),
                step => step.Contains("entry_placed", StringComparison.Ordinal));
    }
}
