using System.Diagnostics;
using RebuildApi.Contracts;
using RebuildApi.TestKit;

namespace RebuildApi.PluginHost.Tests;

/// <summary>What would end a service ends a worker, costs that one answer, and is forgotten by the next.</summary>
public sealed class WorkerTests : IDisposable
{
    private readonly PluginBench _bench = new();

    private string Mark => _bench.Worker.Arguments[^1];

    [Fact]
    public async Task A_looping_hook_is_ended_and_leaves_no_process()
    {
        var catalog = _bench.Shipped("loops-in-hook").OpenWithWorkers();

        Assert.Equal(["hook-late"], catalog.Run("shelf-loops", "loops").Codes());
        Assert.True(await Processes.AllGone(Mark));
    }

    [Theory]
    [InlineData("loops-in-constructor", PluginState.Failed, "It did not answer in time.")]
    [InlineData("exits-in-declare", PluginState.Failed, "It ended its process with exit code 77.")]
    [InlineData("throws-in-declare", PluginState.Failed, "InvalidOperationException: broke while declaring")]
    [InlineData("says-another-name", PluginState.Refused, "It calls itself good-with-hook but lies in the folder says-another-name.")]
    public void A_plugin_that_breaks_while_it_is_loaded_comes_to_its_state(string id, PluginState state, string reason)
    {
        var catalog = _bench.Shipped(id, "good-with-hook").OpenWithWorkers(o => o with { DeclareBudget = TimeSpan.FromSeconds(15) });

        Assert.Equal((state, reason), (catalog.Of(id).State, catalog.Of(id).Reason));
        Assert.NotNull(catalog.Find("shelf-good"));
    }

    [Fact]
    public void What_was_declared_once_needs_no_worker_at_the_next_start()
    {
        var folder = Path.Combine(_bench.Root, "declared");
        _bench.Shipped("good-with-hook").OpenWithWorkers(o => o with { DeclarationFolder = folder });

        var again = _bench.Open(o => o with { DeclarationFolder = folder, Worker = new WorkerCommand("no-such-program", []) });

        Assert.NotNull(again.Find("shelf-good"));
    }

    [Fact]
    public void A_kept_declaration_that_is_not_whole_is_asked_for_again()
    {
        var folder = Path.Combine(_bench.Root, "declared");
        _bench.Shipped("good-with-hook").OpenWithWorkers(o => o with { DeclarationFolder = folder });
        var kept = Directory.EnumerateFiles(folder).Single();
        File.WriteAllBytes(kept, File.ReadAllBytes(kept)[..^7]);

        var again = _bench.OpenWithWorkers(o => o with { DeclarationFolder = folder });

        Assert.NotNull(again.Find("shelf-good"));
    }

    [Fact]
    public void A_program_that_is_not_there_is_said_plainly()
    {
        var status = _bench.Shipped("good-with-hook").Open(o => o with { Worker = new WorkerCommand("no-such-program", []) }).Of("good-with-hook");

        Assert.Equal((PluginState.Failed, "There is no program no-such-program for its worker process."), (status.State, status.Reason));
    }

    [Fact]
    public void No_worker_runs_until_there_is_code_to_run_and_one_is_kept_for_the_next_call()
    {
        var catalog = _bench.Shipped("good-with-hook").OpenWithWorkers();

        var before = Processes.With(Mark);
        catalog.Run("shelf-good", "side");
        var first = Processes.With(Mark);
        catalog.Run("shelf-good", "side");

        Assert.Empty(before);
        Assert.NotEmpty(first);
        Assert.Equal(first, Processes.With(Mark));
    }

    [Fact]
    public async Task Workers_leave_with_the_catalog()
    {
        var catalog = _bench.Shipped("good-with-hook").OpenWithWorkers();
        catalog.Run("shelf-good", "side");

        catalog.Dispose();

        Assert.True(await Processes.AllGone(Mark));
    }

    [Fact]
    public async Task Workers_leave_when_the_service_is_killed_even_in_the_middle_of_a_hook()
    {
        _bench.Shipped("hostile");
        // The service looks for approvals in its data folder.
        File.Move(_bench.ShippedList, Path.Combine(_bench.Root, "approved-plugins.txt"));
        var mark = "killed-" + Mark;
        using var service = Process.Start(new ProcessStartInfo("dotnet", [Shelf.PathOf("a-service"), _bench.Root, "shelf-hostile", "loops-for-long", mark])
        {
            RedirectStandardOutput = true,
            RedirectStandardInput = true,
        })!;
        Assert.Equal("asking", await service.StandardOutput.ReadLineAsync());
        while (Processes.With("plugin-worker\0" + mark).Count == 0)
            await Task.Delay(50);

        service.Kill();

        Assert.True(await Processes.AllGone(mark));
    }

    [Fact]
    public async Task What_a_plugin_starts_ends_with_it_where_the_system_allows()
    {
        var seconds = "86400." + Environment.ProcessId;
        var catalog = _bench.Shipped("hostile").OpenWithWorkers();
        var contained = catalog.Of("hostile").Containment!.Contains("whatever it starts ends with it", StringComparison.Ordinal);
        catalog.Run("shelf-hostile", "spawns", For(catalog, seconds));
        Assert.NotEmpty(Processes.With(seconds));

        catalog.Dispose();

        Assert.Equal(contained, await Processes.AllGone(seconds));
    }

    [Fact]
    public async Task A_call_in_flight_finishes_on_the_plugin_that_it_began_with()
    {
        var catalog = _bench.Shipped("good-with-hook").OpenWithWorkers();
        var calls = Enumerable.Range(0, 8).Select(_ => Task.Run(ManyCalls)).ToList();

        for (var swap = 0; swap < 3; swap++)
            await catalog.Reload("good-with-hook", CancellationToken.None);

        Assert.All((await Task.WhenAll(calls)).SelectMany(c => c), result => Assert.Single(result.Verdicts));

        List<HookAnswerResult> ManyCalls() => [.. Enumerable.Range(0, 40).Select(_ => catalog.Run("shelf-good", "side"))];
    }

    private static UnitSnapshot For(PluginCatalog catalog, string unit) =>
        SnapshotBuilder.Complete(catalog.Find("shelf-hostile")!.Family).Snapshot with { Unit = unit };

    public void Dispose() => _bench.Dispose();
}
