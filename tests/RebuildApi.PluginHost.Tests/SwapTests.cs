using System.Globalization;

namespace RebuildApi.PluginHost.Tests;

/// <summary>Replacing a plug-in while it is being asked. <c>REBUILD_SOAK_SWAPS</c> makes it a long run.</summary>
public sealed class SwapTests : IDisposable
{
    private static readonly int Swaps = int.Parse(Environment.GetEnvironmentVariable("REBUILD_SOAK_SWAPS") ?? "6", CultureInfo.InvariantCulture);
    private readonly PluginBench _bench = new();

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Swapping_over_and_over_under_load_loses_no_call_and_leaves_nothing_behind(bool workers)
    {
        var catalog = workers ? _bench.Shipped("good-with-hook").OpenWithWorkers() : _bench.Shipped("good-with-hook").Open();
        using var enough = new CancellationTokenSource();
        var callers = Enumerable.Range(0, 3).Select(_ => Task.Run(() => Failures(catalog, enough.Token))).ToList();

        for (var edition = 1; edition <= Swaps; edition++)
            await Swap(catalog, edition);
        await enough.CancelAsync();

        Assert.Empty((await Task.WhenAll(callers)).SelectMany(f => f));
        Assert.True(Generations() <= 1, $"{Generations()} shadow copies are left.");
        Assert.True(Processes.With(_bench.Worker.Arguments[^1]).Count <= 2, "more than one worker (and what contains it) is left.");
    }

    /// <summary>The same assembly with a number behind its end: other bytes, another hash, the same code.</summary>
    private async Task Swap(PluginCatalog catalog, int edition)
    {
        byte[] assembly = [.. File.ReadAllBytes(Shelf.PathOf("good-with-hook")), .. BitConverter.GetBytes(edition)];
        _bench.Dropped("good-with-hook", assembly);
        File.WriteAllText(_bench.ShippedList, $"{PluginBench.Sha256Of(assembly)}  good-with-hook/good-with-hook.dll\n");

        var status = await catalog.Reload("good-with-hook", CancellationToken.None);

        Assert.Equal(PluginState.Loaded, status.State);
    }

    private static List<string> Failures(PluginCatalog catalog, CancellationToken enough)
    {
        var failures = new List<string>();
        while (!enough.IsCancellationRequested)
            failures.AddRange(catalog.Run("shelf-good", "side").Codes());
        return failures;
    }

    private int Generations() => Directory.EnumerateDirectories(_bench.Shadow).SelectMany(Directory.EnumerateDirectories).Count();

    public void Dispose() => _bench.Dispose();
}
