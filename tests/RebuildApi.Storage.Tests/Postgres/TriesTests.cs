namespace RebuildApi.Storage.Tests.Postgres;

/// <summary>What is slowed over all copies of the service. The clock stands until it is moved.</summary>
public class TriesTests
{
    private static readonly TryLimit Limit = new(3, TimeSpan.FromSeconds(5));

    private static async Task<TimeSpan[]> Try(int times, params IStore[] copies)
    {
        var waits = new List<TimeSpan>();
        for (var i = 0; i < times; i++)
            waits.Add(await copies[i % copies.Length].CountTry("10.0.0.7", Limit, default));
        return [.. waits];
    }

    [PostgresFact]
    public async Task Tries_at_one_copy_count_at_the_other_and_one_more_comes_with_time()
    {
        await using var temp = new TempStore();
        await using var other = Stores.Open(temp.Options);

        Assert.Equal([0, 0, 0, 5, 5], (await Try(5, temp.Store, other)).Select(w => w.TotalSeconds));
        temp.Time.Advance(TimeSpan.FromSeconds(2));
        Assert.Equal([3], (await Try(1, other)).Select(w => w.TotalSeconds));
        temp.Time.Advance(TimeSpan.FromSeconds(3));
        Assert.Equal([0, 5], (await Try(2, temp.Store, other)).Select(w => w.TotalSeconds));
        temp.Time.Advance(TimeSpan.FromHours(1));
        Assert.Equal([0, 0, 0, 5], (await Try(4, temp.Store, other)).Select(w => w.TotalSeconds));
    }

    [PostgresFact]
    public async Task Everybody_and_every_shop_is_counted_apart()
    {
        await using var temp = new TempStore();
        await using var branch = Stores.Open(temp.Options with { Shop = "branch" });
        await Try(4, temp.Store);

        Assert.Equal(TimeSpan.Zero, await temp.Store.CountTry("10.0.0.8", Limit, default));
        Assert.Equal(TimeSpan.Zero, await branch.CountTry("10.0.0.7", Limit, default));
    }

    [PostgresFact]
    public async Task Of_many_at_once_no_more_are_let_through_than_may()
    {
        await using var temp = new TempStore();
        await using var other = Stores.Open(temp.Options);

        var waits = await Task.WhenAll(Enumerable.Range(0, 30).Select(i => Task.Run(async () => await (i % 2 == 0 ? temp.Store : other).CountTry("10.0.0.7", Limit, default))));

        Assert.Equal(3, waits.Count(w => w == TimeSpan.Zero));
    }

    [PostgresFact]
    public async Task What_is_over_is_let_go_and_of_who_tried_only_a_hash_stands_there()
    {
        await using var temp = new TempStore();
        for (var i = 0; i < 50; i++)
            await temp.Store.CountTry($"10.0.1.{i}", Limit, default);
        Assert.Equal(["50"], temp.Ask("SELECT COUNT(*)::text FROM tries"));
        Assert.Empty(temp.Ask("SELECT t::text FROM tries t WHERE t::text LIKE '%10.0.1%'"));

        temp.Time.Advance(TimeSpan.FromSeconds(16));
        await Try(1, temp.Store);

        Assert.Equal(["1"], temp.Ask("SELECT COUNT(*)::text FROM tries"));
    }
}
