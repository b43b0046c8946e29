using System.Globalization;
using Xunit.Abstractions;

namespace RebuildApi.PluginHost.Tests;

/// <summary>Replacing a plug-in while it is being asked. <c>REBUILD_SOAK_SWAPS</c> makes it a long run.</summary>
[Collection(Alone.Name)]
public sealed class SwapTests(ITestOutputHelper output) : IDisposable
{
    private const long MostGrowth = 16 << 20;
    private static readonly int Swaps = int.Parse(Environment.GetEnvironmentVariable("REBUILD_SOAK_SWAPS") ?? "6", CultureInfo.InvariantCulture);
    private readonly PluginBench _bench = new();

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Swapping_over_and_over_under_load_loses_no_call_and_leaves_nothing_behind(bool workers)
    {
        var catalog = workers ? _bench.Shipped("good-with-hook").OpenWithWorkers() : _bench.Shipped("good-with-hook").Open();
        using var enough = new CancellationTokenSource();
        var callers = Enumerable.Range(0, 3).Select(_ => Task.Run(() => Ask(catalog, enough.Token))).ToList();

        // What is there once and for all, such as compiled code, is there after the first third.
        await SwapTo(catalog, 1, Swaps / 3);
        var before = Held.Now();
        await SwapTo(catalog, (Swaps / 3) + 1, Swaps);
        await enough.CancelAsync();
        var asked = await Task.WhenAll(callers);
        var after = Held.Now();

        var where = workers ? "in workers" : "in process";
        output.WriteLine(FormattableString.Invariant($"{Swaps} swaps {where}: {asked.Sum(a => a.Calls)} calls, {asked.Sum(a => a.Failures.Count)} failed; {before} then, {after} at the end"));
        Assert.Empty(asked.SelectMany(a => a.Failures));
        Assert.True(after.HeapBytes - before.HeapBytes < MostGrowth, $"The heap grew from {before} to {after}.");
        Assert.True(after.Handles <= before.Handles + 8, $"The open files grew from {before} to {after}.");
        Assert.True(Generations() <= 1, $"{Generations()} shadow copies are left.");
        Assert.True(Processes.With(_bench.Worker.Arguments[^1]).Count <= 2, "more than one worker (and what contains it) is left.");
    }

    private async Task SwapTo(PluginCatalog catalog, int first, int last)
    {
        for (var edition = first; edition <= last; edition++)
            await Swap(catalog, edition);
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

    private static (long Calls, List<string> Failures) Ask(PluginCatalog catalog, CancellationToken enough)
    {
        var (calls, failures) = (0L, new List<string>());
        for (; !enough.IsCancellationRequested; calls++)
            failures.AddRange(catalog.Run("shelf-good", "side").Codes());
        return (calls, failures);
    }

    private int Generations() => Directory.EnumerateDirectories(_bench.Shadow).SelectMany(Directory.EnumerateDirectories).Count();

    public void Dispose() => _bench.Dispose();
}
