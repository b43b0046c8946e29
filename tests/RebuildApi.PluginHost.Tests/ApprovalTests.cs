using RebuildApi.Contracts;

namespace RebuildApi.PluginHost.Tests;

public sealed class ApprovalTests : IDisposable
{
    private readonly PluginBench _bench = new();

    [Fact]
    public void Nothing_of_an_unapproved_plugin_is_used()
    {
        var catalog = _bench.Dropped("good-with-hook").Open();

        Assert.Equal(PluginState.AwaitingApproval, catalog.Of("good-with-hook").State);
        Assert.Empty(catalog.Families);
        Assert.Empty(Directory.EnumerateFiles(_bench.Shadow, "*.dll", SearchOption.AllDirectories));
    }

    [Fact]
    public async Task An_approval_loads_at_once_and_lasts()
    {
        var catalog = _bench.Dropped("good-with-hook").Open();

        var status = await catalog.Approve("good-with-hook", catalog.Of("good-with-hook").Sha256!, "Ada", CancellationToken.None);

        Assert.Equal(PluginState.Loaded, status.State);
        Assert.NotNull(_bench.Open().Find("shelf-good"));
        Assert.Contains("approved by Ada at 2026-03-02T12:00:00Z", await File.ReadAllTextAsync(_bench.ApprovalsFile), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_approver_s_name_can_t_write_a_second_approval()
    {
        var catalog = _bench.Dropped("good-with-hook").Open();
        var forged = $"Ada\n{new string('a', 64)}  throws-in-hook";

        await catalog.Approve("good-with-hook", catalog.Of("good-with-hook").Sha256!, forged, CancellationToken.None);

        Assert.Single(await File.ReadAllLinesAsync(_bench.ApprovalsFile));
    }

    [Fact]
    public async Task What_was_swapped_after_it_was_looked_at_is_not_approved()
    {
        var catalog = _bench.Dropped("good-with-hook").Open();
        var seen = catalog.Of("good-with-hook").Sha256!;
        _bench.Dropped("good-with-hook", File.ReadAllBytes(Shelf.PathOf("throws-in-hook")));

        await Assert.ThrowsAsync<PluginChangedException>(() => catalog.Approve("good-with-hook", seen, "Ada", CancellationToken.None));

        Assert.False(File.Exists(_bench.ApprovalsFile));
    }

    [Fact]
    public async Task What_was_swapped_after_approval_awaits_approval_anew()
    {
        var catalog = _bench.Shipped("good-with-hook").Open();
        _bench.Dropped("good-with-hook", File.ReadAllBytes(Shelf.PathOf("throws-in-hook")));

        var status = await catalog.Reload("good-with-hook", CancellationToken.None);

        Assert.Equal(PluginState.AwaitingApproval, status.State);
        Assert.Empty(catalog.Families);
    }

    [Fact]
    public void An_assembly_added_beside_an_approved_one_needs_approval()
    {
        var catalog = _bench.Shipped("good-with-hook").Dropped("good-with-hook", File.ReadAllBytes(Shelf.PathOf("a-dependency")), "a-dependency.dll").Open();

        Assert.Equal(PluginState.AwaitingApproval, catalog.Of("good-with-hook").State);
    }

    [Fact]
    public void The_hash_is_what_the_usual_tool_prints_for_all_assemblies_together()
    {
        // LC_ALL=C sha256sum *.dll | sha256sum, computed here line by line.
        var folder = _bench.Dropped("with-dependency").FolderFor("with-dependency");
        var lines = LineOf("a-dependency.dll") + LineOf("with-dependency.dll");

        Assert.Equal(PluginBench.Sha256Of(lines), _bench.Open().Of("with-dependency").Sha256);

        string LineOf(string name) => $"{PluginBench.Sha256Of(File.ReadAllBytes(Path.Combine(folder, name)))}  {name}\n";
    }

    [Theory]
    [InlineData(1, 0, PluginState.AwaitingApproval)]
    [InlineData(1, 1, PluginState.AwaitingApproval)]
    [InlineData(1, 2, PluginState.AwaitingApproval)]
    [InlineData(1, 3, PluginState.Refused)]
    [InlineData(0, 9, PluginState.Refused)]
    [InlineData(2, 0, PluginState.Refused)]
    public void The_contract_version_is_read_before_anything_runs(ushort major, ushort minor, PluginState state)
    {
        var assembly = ContractReference.Rewritten(File.ReadAllBytes(Shelf.PathOf("good-with-hook")), major, minor);

        var status = _bench.Dropped("good-with-hook", assembly).Open().Of("good-with-hook");

        Assert.Equal(state, status.State);
    }

    public void Dispose() => _bench.Dispose();
}
