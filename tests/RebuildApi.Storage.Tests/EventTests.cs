namespace RebuildApi.Storage.Tests;

public class EventTests
{
    [Fact]
    public async Task Everything_that_happens_is_an_event_in_the_order_of_commit()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Write(s => s.Add("u1", Some.Measurement()));

        var events = await temp.Store.Events(0, 100, default);
        var later = await temp.Store.Events(3, 100, default);

        Assert.Equal([1, 2, 3, 4], events.Select(e => e.Sequence));
        Assert.Equal(["unit", "component", "placement", "measurement"], events.Select(e => e.Kind));
        Assert.All(events, e => Assert.Equal(("u1", "bench-1", temp.Time.GetUtcNow()), (e.Unit, e.Actor, e.At)));
        Assert.Equal("m1", later.Single().Id);
    }

    [Fact]
    public async Task What_was_refused_or_tried_dry_is_no_event()
    {
        await using var temp = new TempStore();
        await temp.Write(Requests.Plain with { DryRun = true }, s => s.Open(Some.Unit()));
        await Assert.ThrowsAsync<DuplicateIdException>(() => temp.Write(s =>
        {
            s.Open(Some.Unit());
            s.Open(Some.Unit());
        }));

        Assert.Empty(await temp.Store.Events(0, 100, default));
    }

    [Fact]
    public async Task A_listener_wakes_when_something_is_committed()
    {
        await using var temp = new TempStore();
        var waiting = temp.Store.NextEvent(0, default);
        Assert.False(waiting.IsCompleted);

        await temp.Write(s => s.OpenWithPart());

        Assert.Equal(3, await waiting);
        Assert.Equal(3, await temp.Store.NextEvent(2, default));
    }

    [Fact]
    public async Task After_a_restart_a_listener_knows_where_the_events_had_got_to()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Close();

        Assert.Equal(3, await temp.Store.NextEvent(0, default));
    }

    [Fact]
    public async Task A_listener_may_go()
    {
        await using var temp = new TempStore();
        using var patience = new CancellationTokenSource();
        var waiting = temp.Store.NextEvent(0, patience.Token);

        await patience.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);
    }

    [Fact]
    public async Task Sixty_four_listeners_see_every_event_once()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        var listeners = Enumerable.Range(0, 64).Select(_ => Task.Run(() => Listen(temp, 203))).ToArray();

        for (var i = 0; i < 200; i++)
            await temp.Write(s => s.Add("u1", Some.Measurement($"m{i}")));

        foreach (var seen in await Task.WhenAll(listeners))
            Assert.Equal(Enumerable.Range(1, 203).Select(i => (long)i), seen);
    }

    private static async Task<List<long>> Listen(TempStore temp, long last)
    {
        var seen = new List<long> { };
        while (seen.LastOrDefault() < last)
        {
            await temp.Store.NextEvent(seen.LastOrDefault(), default);
            seen.AddRange((await temp.Store.Events(seen.LastOrDefault(), 1000, default)).Select(e => e.Sequence));
        }

        return seen;
    }
}
