using RebuildApi.Contracts;

namespace RebuildApi.Storage.Tests;

public class WriterTests
{
    [Fact]
    public async Task Readings_from_sixteen_benches_never_conflict()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        var start = (await temp.Store.Unit("u1", default))!.Version;

        await Task.WhenAll(Enumerable.Range(0, 16).Select(bench => Task.Run(async () =>
        {
            for (var i = 0; i < 25; i++)
                await temp.Write(s => s.Add("u1", Some.Measurement($"{bench}-{i}")));
        })));

        var file = await temp.Store.File("u1", default);
        Assert.Equal(400, file!.Measurements.Select(m => m.Id).Distinct().Count());
        Assert.Equal(start + 400, file.Unit.Version);
        Assert.True((await temp.Store.VerifyChain(default)).Intact);
    }

    [Fact]
    public async Task A_file_is_one_moment_however_busy_the_benches_are()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        var start = (await temp.Store.Unit("u1", default))!.Version;
        var writing = Task.Run(async () =>
        {
            for (var i = 0; i < 200; i++)
                await temp.Write(s => s.Add("u1", Some.Measurement($"m{i}")));
        });

        while (!writing.IsCompleted)
        {
            var file = await temp.Store.File("u1", default);
            Assert.Equal(file!.Unit.Version - start, file.Measurements.Length);
        }

        await writing;
    }

    [Fact]
    public async Task Of_many_who_change_the_same_version_one_wins()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.Open(Some.Unit()));

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(async i =>
        {
            try
            {
                await temp.Write(s => s.Change(Some.Unit(stage: $"stage-{i}"), 1));
                return true;
            }
            catch (VersionConflictException)
            {
                return false;
            }
        }));

        Assert.Single(outcomes, won => won);
    }

    [Fact]
    public async Task Stopping_carries_through_what_waits_and_takes_no_more()
    {
        await using var temp = new TempStore();
        var store = temp.Store;
        var waiting = Enumerable.Range(0, 300).Select(i => temp.Write(s => s.Open(Some.Unit($"u{i}")))).ToArray();

        await store.DisposeAsync();

        await Task.WhenAll(waiting);
        var refusal = await Assert.ThrowsAsync<StorageUnavailableException>(() => store.Write(Requests.Plain, _ => Requests.Ok(""), default));
        Assert.Equal("stopping", refusal.Code);
        await temp.Close();
        Assert.Equal(300, (await temp.Store.VerifyChain(default)).Entries);
    }

    [Fact]
    public async Task A_caller_who_goes_before_the_work_began_leaves_nothing_behind()
    {
        await using var temp = new TempStore();
        using var gate = new ManualResetEventSlim();
        var blocking = temp.Write(_ => gate.Wait());
        using var patience = new CancellationTokenSource();
        var waiting = temp.Store.Write(
            Requests.Plain,
            s =>
            {
                s.Open(Some.Unit());
                return Requests.Ok("");
            },
            patience.Token);

        await patience.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);
        gate.Set();
        await blocking;
        Assert.Null(await temp.Store.Unit("u1", default));
    }

    [Fact]
    public async Task Two_shops_in_one_file_do_not_see_each_other()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await using var branch = Stores.Open(temp.Options with { Shop = "branch" });

        await branch.Write(
            Requests.Plain,
            s =>
            {
                Assert.Null(s.Unit("u1"));
                s.OpenWithPart();
                s.Add("u1", Some.Measurement());
                return Requests.Ok("");
            },
            default);

        Assert.Empty((await temp.Store.File("u1", default))!.Measurements);
        Assert.Single((await branch.File("u1", default))!.Measurements);
        Assert.Equal(3, (await temp.Store.VerifyChain(default)).Entries);
        Assert.Equal(4, (await branch.VerifyChain(default)).Entries);
        Assert.True((await branch.VerifyChain(default)).Intact);
    }
}
