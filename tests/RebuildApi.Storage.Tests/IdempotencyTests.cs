namespace RebuildApi.Storage.Tests;

public class IdempotencyTests
{
    [Fact]
    public async Task A_repeated_request_is_answered_as_before_and_done_once()
    {
        await using var temp = new TempStore();
        var first = await temp.Write(Requests.Keyed("k"), s => s.Open(Some.Unit()));

        var second = await temp.Write(Requests.Keyed("k"), s => s.Open(Some.Unit()));

        Assert.False(first.Replayed);
        Assert.True(second.Replayed);
        Assert.Equal("done", second.Text());
        Assert.Equal((first.Status, first.ContentType), (second.Status, second.ContentType));
        Assert.Equal(first.Headers, second.Headers);
    }

    [Theory]
    [InlineData("bb", "POST /v1/units")]
    [InlineData("aa", "POST /v1/units/u1/findings")]
    public async Task A_key_belongs_to_one_request(string sha256, string operation)
    {
        await using var temp = new TempStore();
        await temp.Write(Requests.Keyed("k"), s => s.Open(Some.Unit()));

        await Assert.ThrowsAsync<IdempotencyKeyReusedException>(
            () => temp.Write(Requests.Keyed("k", sha256) with { Operation = operation }, s => s.Open(Some.Unit("u2"))));

        Assert.Null(await temp.Store.Unit("u2", default));
    }

    [Fact]
    public async Task Two_benches_may_choose_the_same_key()
    {
        await using var temp = new TempStore();
        await temp.Write(Requests.Keyed("k"), s => s.Open(Some.Unit("u1")));

        var other = await temp.Write(Requests.Keyed("k") with { Actor = "bench-2" }, s => s.Open(Some.Unit("u2")));

        Assert.False(other.Replayed);
    }

    [Fact]
    public async Task A_refusal_is_not_remembered()
    {
        await using var temp = new TempStore();
        await Assert.ThrowsAsync<UnknownIdException>(() => temp.Write(Requests.Keyed("k"), s => s.Add("u1", Some.Decision())));
        await temp.Write(s => s.Open(Some.Unit()));

        var again = await temp.Write(Requests.Keyed("k"), s => s.Add("u1", Some.Decision()));

        Assert.False(again.Replayed);
    }

    [Fact]
    public async Task A_key_is_forgotten_after_seven_days()
    {
        await using var temp = new TempStore();
        await temp.Write(Requests.Keyed("k"), s => s.Open(Some.Unit("u1")));
        temp.Time.Advance(TimeSpan.FromDays(7));
        var onTheDay = await temp.Write(Requests.Keyed("k"), s => s.Open(Some.Unit("u1")));
        temp.Time.Advance(TimeSpan.FromSeconds(1));

        var after = await temp.Write(Requests.Keyed("k"), s => s.Open(Some.Unit("u2")));

        Assert.True(onTheDay.Replayed);
        Assert.False(after.Replayed);
    }

    [Fact]
    public async Task The_same_request_from_many_at_once_is_done_once()
    {
        await using var temp = new TempStore();
        var store = temp.Store;

        var answers = await Task.WhenAll(Enumerable.Range(0, 50).Select(_ => temp.Write(Requests.Keyed("k"), s => s.Open(Some.Unit()))));

        Assert.Single(answers, a => !a.Replayed);
        Assert.Equal(1, (await store.VerifyChain(default)).Entries);
    }

    [Fact]
    public async Task A_dry_run_answers_and_leaves_nothing_behind()
    {
        await using var temp = new TempStore();
        var dry = Requests.Keyed("k") with { DryRun = true };

        var answer = await temp.Write(dry, s => s.Open(Some.Unit()));

        Assert.Equal("done", answer.Text());
        Assert.Null(await temp.Store.Unit("u1", default));
        Assert.Equal(0, (await temp.Store.VerifyChain(default)).Entries);
        Assert.False((await temp.Write(Requests.Keyed("k"), s => s.Open(Some.Unit()))).Replayed);
    }
}
