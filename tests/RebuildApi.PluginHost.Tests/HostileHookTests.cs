using System.Net;
using System.Net.Sockets;
using RebuildApi.Contracts;
using RebuildApi.TestKit;

namespace RebuildApi.PluginHost.Tests;

/// <summary>What would end a service ends a worker, costs that one answer, and is forgotten by the next.</summary>
public sealed class HostileHookTests(HostileBench bench) : IClassFixture<HostileBench>
{
    private PluginCatalog Catalog => bench.Catalog;

    [Theory]
    [InlineData("exits", "hook-crashed")]
    [InlineData("fails-fast", "hook-crashed")]
    [InlineData("overflows-stack", "hook-crashed")]
    [InlineData("throws-on-thread", "hook-crashed")]
    [InlineData("eats-objects", "hook-threw")]
    [InlineData("floods-output", "hook-answer-invalid")]
    public void A_hostile_hook_costs_its_own_answer_and_nothing_else(string hook, string code)
    {
        var result = Catalog.Run("shelf-hostile", hook);

        Assert.Equal([code], result.Codes());
        Assert.Equal(Compatibility.Compatible, Catalog.Run("shelf-good", "side").Verdicts.Single().Outcome);
        Assert.Equal(Compatibility.Compatible, Catalog.Run("shelf-hostile", "looks-around").Verdicts.Single().Outcome);
    }

    [Fact]
    public void A_hook_that_eats_memory_does_not_eat_the_machine_s()
    {
        var result = Catalog.Run("shelf-hostile", "eats-memory");

        Assert.Empty(result.Verdicts);
        Assert.NotEqual(["hook-not-available"], result.Codes());
    }

    [Fact]
    public void A_worker_reaches_no_network_where_the_system_allows()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var port = ((IPEndPoint)listener.LocalEndpoint).Port.ToString(System.Globalization.CultureInfo.InvariantCulture);
        var contained = Catalog.Of("hostile").Containment!.Contains("without network", StringComparison.Ordinal);

        var result = Catalog.Run("shelf-hostile", "calls-out", For(port));

        Assert.Equal(contained, result.Verdicts.IsEmpty);
    }

    [Fact]
    public void A_worker_writes_nothing_to_files_where_the_system_allows()
    {
        var name = "written-" + bench.Mark;
        var contained = !Catalog.Of("hostile").Containment!.Contains("Not contained: other memory, files", StringComparison.Ordinal);

        var result = Catalog.Run("shelf-hostile", "writes-a-file", For(name));

        var file = new FileInfo(Path.Combine("/tmp", name));
        var empty = !file.Exists || file.Length == 0;
        file.Delete();
        Assert.Equal((contained, contained), (result.Verdicts.IsEmpty, empty));
    }

    [Fact]
    public void A_worker_is_told_nothing_of_the_service_s_surroundings()
    {
        Environment.SetEnvironmentVariable("SHOP_SECRET", "hunter2");

        var names = Catalog.Run("shelf-hostile", "looks-around").Verdicts.Single().Reasons.Single().Arguments["words"].Split(' ');

        Assert.All(names, n => Assert.True(n.StartsWith("DOTNET_", StringComparison.Ordinal) || n is "LD_LIBRARY_PATH" or "SystemRoot", n));
    }

    private UnitSnapshot For(string unit) => SnapshotBuilder.Complete(Catalog.Find("shelf-hostile")!.Family).Snapshot with { Unit = unit };
}

/// <summary>One catalog for all hostile hooks, which forgives however many faults.</summary>
public sealed class HostileBench : IDisposable
{
    private readonly PluginBench _bench = new();

    public HostileBench() => Catalog = _bench.Shipped("hostile", "good-with-hook").OpenWithWorkers(o => o with
    {
        LongestHookBudget = TimeSpan.FromSeconds(20),
        Suspension = new SuspensionOptions() with { AfterFaults = 1000 },
    });

    public PluginCatalog Catalog { get; }

    /// <summary>Tells this bench's files and processes from all others.</summary>
    public string Mark => _bench.Worker.Arguments[^1];

    public void Dispose() => _bench.Dispose();
}
