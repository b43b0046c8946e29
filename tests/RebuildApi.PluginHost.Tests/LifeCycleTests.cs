using System.Runtime.CompilerServices;
using System.Runtime.Loader;

namespace RebuildApi.PluginHost.Tests;

public sealed class LifeCycleTests : IDisposable
{
    private readonly PluginBench _bench = new();

    [Fact]
    public async Task A_plugin_dropped_in_while_running_is_taken_up()
    {
        var catalog = _bench.Open();
        _bench.Shipped("good-with-hook");

        await catalog.ReloadAll(CancellationToken.None);

        Assert.NotNull(catalog.Find("shelf-good"));
    }

    [Fact]
    public async Task A_plugin_whose_folder_is_gone_supplies_nothing()
    {
        var catalog = _bench.Shipped("good-with-hook").Open();
        Directory.Delete(_bench.FolderFor("good-with-hook"), recursive: true);

        var status = await catalog.Reload("good-with-hook", CancellationToken.None);

        Assert.Equal((PluginState.Removed, "Its folder is gone."), (status.State, status.Reason));
        Assert.Empty(catalog.Families);
    }

    [Fact]
    public async Task When_the_first_supplier_of_a_family_goes_the_second_takes_over()
    {
        var catalog = _bench.Shipped("same-family-first", "same-family-second").Open();
        Directory.Delete(_bench.FolderFor("same-family-first"), recursive: true);

        await catalog.Reload("same-family-first", CancellationToken.None);

        Assert.Equal("same-family-second", catalog.Find("shelf-same")!.Plugin);
    }

    [Fact]
    public async Task Each_change_is_told()
    {
        var catalog = _bench.Shipped("good-with-hook").Open();
        var told = new List<string>();
        catalog.Changed += (_, status) => told.Add($"{status.Id} {status.State}");

        await catalog.Reload("good-with-hook", CancellationToken.None);

        Assert.Equal(["good-with-hook Loaded"], told);
    }

    [Fact]
    public void Shadow_copies_go_with_the_catalog()
    {
        _bench.Shipped("good-with-hook").Open().Dispose();

        Assert.Empty(Directory.EnumerateFileSystemEntries(_bench.Shadow));
    }

    [Fact]
    public void Shadow_copies_of_a_service_that_was_killed_are_cleared_at_the_next_start_and_a_living_one_s_are_not()
    {
        using var living = _bench.Shipped("good-with-hook").Open();
        Directory.CreateDirectory(Path.Combine(_bench.Shadow, "run-killed", "1", "good-with-hook"));

        using var second = _bench.Open();

        Assert.False(Directory.Exists(Path.Combine(_bench.Shadow, "run-killed")));
        Assert.Equal(2, Directory.EnumerateDirectories(_bench.Shadow).Count());
    }

    [Fact]
    public void A_plugin_that_was_let_go_is_unloaded()
    {
        var context = LoadUseAndLetGo();

        for (var round = 0; context.IsAlive && round < 20; round++)
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }

        Assert.False(context.IsAlive);
    }

    // Not inlined, so that no local of this method keeps the context alive in the caller.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private WeakReference LoadUseAndLetGo()
    {
        using var catalog = _bench.Shipped("lets-go").Open();
        catalog.Run("shelf-lets-go", "side");
        return new WeakReference(AssemblyLoadContext.All.Single(c => c.Name == "lets-go"));
    }

    public void Dispose() => _bench.Dispose();
}
