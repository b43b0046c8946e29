using System.Text;

namespace RebuildApi.Storage.Tests;

public class ReadingTests
{
    [Fact]
    public async Task Pages_hold_every_unit_once_in_the_order_of_ids()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            foreach (var i in Enumerable.Range(1, 7).Reverse())
                s.Open(Some.Unit($"u{i}"));
        });
        var seen = new List<string>();
        string? next = null;

        do
        {
            var page = await temp.Store.Units(next, 3, null, default);
            seen.AddRange(page.Items.Select(u => u.Id));
            next = page.Next;
        }
        while (next is not null);

        Assert.Equal(["u1", "u2", "u3", "u4", "u5", "u6", "u7"], seen);
    }

    [Fact]
    public async Task A_page_can_be_of_one_stage()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.Open(Some.Unit("u1", "intake"));
            s.Open(Some.Unit("u2", "teardown"));
            s.Open(Some.Unit("u3", "intake"));
            s.Change(Some.Unit("u3", "teardown"), null);
        });

        var page = await temp.Store.Units(null, 10, "teardown", default);

        Assert.Equal(["u2", "u3"], page.Items.Select(u => u.Id));
        Assert.Null(page.Next);
    }

    [Theory]
    [InlineData("")]
    [InlineData("not base64!")]
    [InlineData("=")]
    public async Task A_cursor_that_no_page_gave_is_refused(string cursor)
    {
        await using var temp = new TempStore();

        await Assert.ThrowsAsync<UnknownCursorException>(async () => await temp.Store.Units(cursor, 3, null, default));
    }

    [Fact]
    public async Task Instruments_are_listed_by_id()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.Put(Some.Instrument("mic-2"), null);
            s.Put(Some.Instrument("mic-1"), null);
        });

        var page = await temp.Store.Instruments(null, 1, default);
        var rest = await temp.Store.Instruments(page.Next, 1, default);

        Assert.Equal("mic-1", page.Items.Single().State.Id);
        Assert.Equal("mic-2", rest.Items.Single().State.Id);
        Assert.Null(rest.Next);
    }

    [Fact]
    public async Task The_history_keeps_what_was_superseded_and_who_did_what()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart();
            s.OpenWithPart("u2", "c2");
            s.Add("u1", Some.Measurement("m1"));
        });
        await temp.Write(Requests.Plain with { Actor = "Bert" }, s => s.Add("u1", Some.Measurement("m2", millimetres: 30.02m, supersedes: "m1")));

        var history = await temp.Store.History("u1", 0, 100, default);
        var rest = await temp.Store.History("u1", history[2].Event.Sequence, 1, default);

        Assert.Equal(["u1", "c1", "third-gear/1/found", "m1", "m2"], history.Select(h => h.Event.Id));
        Assert.Equal(("Bert", "POST /v1/units"), (history[4].Event.Actor, history[4].Operation));
        Assert.Contains("30.012", history[3].Body, StringComparison.Ordinal);
        Assert.Equal("m1", rest.Single().Event.Id);
    }

    [Fact]
    public async Task A_kept_judgement_comes_back_byte_for_byte()
    {
        await using var temp = new TempStore();
        var id = "";
        await temp.Write(s =>
        {
            s.Open(Some.Unit());
            s.KeepJudgement("u1", "aa", "bb", "latest", "{ \"a\": 1 }"u8.ToArray(), "[1]"u8.ToArray());
            id = s.KeepJudgement("u1", "aa", "bb", "quote", "{ \"a\": 1 }"u8.ToArray(), "[2]"u8.ToArray());
            s.KeepJudgement("u1", "aa", "bb", "latest", "{ \"a\": 1 }"u8.ToArray(), "[3]"u8.ToArray());
        });

        var quote = await temp.Store.Judgement(id, default);
        var latest = await temp.Store.LatestJudgement("u1", null, default);
        var latestQuote = await temp.Store.LatestJudgement("u1", "quote", default);
        var all = await temp.Store.Judgements("u1", null, 10, default);

        Assert.Equal("[2]", Encoding.UTF8.GetString(quote!.Body.Span));
        Assert.Equal("{ \"a\": 1 }", Encoding.UTF8.GetString(quote.Snapshot.Span));
        Assert.Equal("[3]", Encoding.UTF8.GetString(latest!.Body.Span));
        Assert.Equal(id, latestQuote!.Kept.Id);
        Assert.Equal(["latest", "quote", "latest"], all.Items.Select(j => j.Purpose));
        Assert.Null(await temp.Store.Judgement("nothing", default));
    }
}
