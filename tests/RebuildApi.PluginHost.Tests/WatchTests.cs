namespace RebuildApi.PluginHost.Tests;

/// <summary>What is dropped in, changed or removed is taken up without being asked for, once it has settled.</summary>
public sealed class WatchTests : IDisposable
{
    private const string Good = "good-with-hook";
    private readonly PluginBench _bench = new();

    [Fact]
    public async Task What_is_dropped_in_is_taken_up_when_it_has_settled()
    {
        var (catalog, watch) = Watched();
        _bench.Shipped(Good);

        var settling = await watch.Look(CancellationToken.None);
        var before = catalog.Plugins;
        var still = await watch.Look(CancellationToken.None);

        Assert.Equal((true, false), (settling, still));
        Assert.Empty(before);
        Assert.Equal(PluginState.Loaded, catalog.Of(Good).State);
    }

    [Fact]
    public async Task Half_a_copy_is_waited_for()
    {
        var (catalog, watch) = Watched();
        var whole = File.ReadAllBytes(Shelf.PathOf(Good));
        foreach (var part in new[] { 4, 3, 2 })
        {
            _bench.Dropped(Good, whole[..(whole.Length / part)]);
            await watch.Look(CancellationToken.None);
        }

        Assert.Empty(catalog.Plugins);
        _bench.Shipped(Good);
        await Settle(watch);
        Assert.Equal(PluginState.Loaded, catalog.Of(Good).State);
    }

    [Fact]
    public async Task What_is_changed_waits_for_approval_and_what_is_removed_is_gone()
    {
        _bench.Shipped(Good);
        var (catalog, watch) = Watched();

        _bench.Dropped(Good, [.. File.ReadAllBytes(Shelf.PathOf(Good)), 0]);
        await Settle(watch);
        var changed = catalog.Of(Good).State;
        Directory.Delete(_bench.FolderFor(Good), recursive: true);
        await Settle(watch);

        Assert.Equal((PluginState.AwaitingApproval, PluginState.Removed), (changed, catalog.Of(Good).State));
    }

    [Fact]
    public async Task A_family_file_is_noticed_too()
    {
        var (catalog, watch) = Watched();
        var file = Path.Combine(_bench.FamilyFolder, "marsh-1.yaml");

        await File.WriteAllTextAsync(file, "family: marsh-1");
        await Settle(watch);
        var dropped = catalog.Of("marsh-1.yaml");
        await File.WriteAllTextAsync(file, "family: marsh-2\n");
        await Settle(watch);
        var changed = catalog.Of("marsh-1.yaml");
        File.Delete(file);
        await Settle(watch);

        Assert.Equal((PluginState.AwaitingApproval, PluginState.AwaitingApproval), (dropped.State, changed.State));
        Assert.NotEqual(dropped.Sha256, changed.Sha256);
        Assert.Equal(PluginState.Removed, catalog.Of("marsh-1.yaml").State);
    }

    [Fact]
    public async Task What_lies_still_is_left_alone()
    {
        _bench.Shipped(Good);
        var (catalog, watch) = Watched();
        catalog.Changed += (_, status) => Assert.Fail($"{status.Id} was taken up again.");

        for (var look = 0; look < 3; look++)
            Assert.False(await watch.Look(CancellationToken.None));
    }

    [Fact]
    public async Task Ten_thousand_files_cost_one_refusal()
    {
        var (catalog, watch) = Watched();
        var folder = _bench.FolderFor("crowded");
        foreach (var number in Enumerable.Range(0, 10_000))
            File.Create(Path.Combine(folder, $"{number}.dll")).Dispose();
        _bench.Shipped(Good);

        await Settle(watch);

        Assert.Equal("Its folder holds more than 100 files.", catalog.Of("crowded").Reason);
        Assert.Equal(PluginState.Loaded, catalog.Of(Good).State);
    }

    [Fact]
    public async Task The_system_s_own_notices_are_heard_and_watching_ends_when_it_is_told_to()
    {
        var catalog = _bench.Open(o => o with { Watch = new WatchOptions(TimeSpan.FromMilliseconds(20), TimeSpan.FromMinutes(10)) });
        using var enough = new CancellationTokenSource();
        var taken = new TaskCompletionSource();
        catalog.Changed += (_, status) => taken.TrySetResult();
        _ = _bench.Drop;
        var watching = catalog.Watch(enough.Token);

        _bench.Shipped(Good);
        await taken.Task.WaitAsync(TimeSpan.FromMinutes(2));
        await enough.CancelAsync();

        await watching.WaitAsync(TimeSpan.FromMinutes(2));
    }

    public void Dispose() => _bench.Dispose();

    private (PluginCatalog Catalog, DropWatch Watch) Watched()
    {
        var catalog = _bench.Open();
        return (catalog, catalog.Watcher());
    }

    /// <summary>Once to see the change, once to see that it stays.</summary>
    private static async Task Settle(DropWatch watch)
    {
        await watch.Look(CancellationToken.None);
        Assert.False(await watch.Look(CancellationToken.None));
    }
}
