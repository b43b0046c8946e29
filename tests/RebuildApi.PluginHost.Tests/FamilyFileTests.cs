using System.Text;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost.Tests;

/// <summary>Families written as files: dropped in, approved, used, changed, taken away.</summary>
public sealed class FamilyFileTests : IDisposable
{
    private const string Reader = "family-files";
    private const string Name = "marsh-1.yaml";

    private const string Marsh = """
        family: marsh-1
        version: 1.0.0
        name: One wheel (invented)
        sources:
          numbers: { invented: a test }
        kinds:
          wheel:
            name: Wheel
            measures:
              width: { name: Width, new: 9.9 to 10.1 mm, service: 9.8 to 10.1 mm }
        positions:
          wheel: { name: Wheel, group: shaft }
        """;

    private readonly PluginBench _bench = new();

    [Fact]
    public async Task A_file_is_used_once_its_hash_is_approved()
    {
        var catalog = Open(Marsh);
        var waiting = catalog.Of(Name);

        var approved = await catalog.Approve(Name, waiting.Sha256!, "Ada", CancellationToken.None);

        Assert.Equal(PluginState.AwaitingApproval, waiting.State);
        Assert.Equal((PluginState.Loaded, PluginBench.Sha256Of(Marsh)), (approved.State, approved.Sha256));
        Assert.Equal("Wheel", catalog.Find("marsh-1")!.Family.Kinds.Single().Name.In("en"));
        Assert.Contains("no code", approved.Containment, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_changed_file_waits_for_a_new_approval()
    {
        var catalog = await Approved(Marsh);
        Write(Marsh + "\n# a thought\n");

        var status = await catalog.Reload(Name, CancellationToken.None);

        Assert.Equal(PluginState.AwaitingApproval, status.State);
        Assert.Null(catalog.Find("marsh-1"));
    }

    [Fact]
    public async Task What_was_looked_at_must_be_what_is_approved()
    {
        var catalog = Open(Marsh);
        var seen = catalog.Of(Name).Sha256!;
        Write(Marsh + "\n");

        await Assert.ThrowsAsync<PluginChangedException>(() => catalog.Approve(Name, seen, "Ada", CancellationToken.None));
    }

    [Fact]
    public async Task A_file_with_an_error_is_refused_and_says_where()
    {
        var catalog = await Approved(Marsh.Replace("9.9 to 10.1 mm", "10.1 to 9.9 mm", StringComparison.Ordinal));

        var status = catalog.Of(Name);
        var found = Assert.Single(Assert.Single(status.RefusedFamilies).Diagnostics);

        Assert.Equal(PluginState.Refused, status.State);
        Assert.Equal((10, "kinds.wheel.measures.width.new", "window-upside-down"), (found.Line, found.Field, found.Code));
    }

    [Fact]
    public async Task What_a_check_finds_in_the_family_is_shown_where_it_stands_in_the_file()
    {
        var catalog = await Approved(Marsh, o => o with
        {
            CheckFamily = _ => [new Diagnostic("marsh-1", 0, 0, "kinds[wheel].characteristics[width].service.low", "a-code", "Words.", false)],
        });

        var doubt = Assert.Single(catalog.Of(Name).Doubts);

        Assert.Equal((Name, 10, "kinds.wheel.measures.width.service.low"), (doubt.File, doubt.Line, doubt.Field));
    }

    [Fact]
    public async Task A_file_that_is_gone_is_no_longer_used()
    {
        var catalog = await Approved(Marsh);
        File.Delete(Path.Combine(_bench.FamilyFolder, Name));

        var status = await catalog.Reload(Name, CancellationToken.None);

        Assert.Equal(PluginState.Removed, status.State);
        Assert.Null(catalog.Find("marsh-1"));
    }

    [Fact]
    public async Task Without_its_reader_a_file_is_not_used_and_with_it_it_is_again()
    {
        var catalog = await Approved(Marsh);
        var folder = Path.Combine(_bench.Drop, Reader);
        Directory.Move(folder, _bench.Root + "/away");
        await catalog.Reload(Reader, CancellationToken.None);
        var without = catalog.Of(Name);

        Directory.Move(_bench.Root + "/away", folder);
        await catalog.Reload(Reader, CancellationToken.None);

        Assert.Equal(PluginState.Refused, without.State);
        Assert.Equal(PluginState.Loaded, catalog.Of(Name).State);
    }

    [Fact]
    public async Task A_plug_in_stands_before_a_file_of_the_same_family()
    {
        _bench.Shipped("good-with-hook");
        var taken = _bench.Open().Families.Single().Family.Version.Id;

        var catalog = await Approved(Marsh.Replace("family: marsh-1", $"family: {taken}", StringComparison.Ordinal));

        Assert.Equal("good-with-hook", catalog.Find(taken)!.Plugin);
        Assert.Equal(PluginState.Refused, catalog.Of(Name).State);
    }

    [Fact]
    public void A_link_is_no_file()
    {
        var real = Path.Combine(_bench.Root, "elsewhere.yaml");
        File.WriteAllText(real, Marsh);
        File.CreateSymbolicLink(Path.Combine(_bench.FamilyFolder, Name), real);

        Assert.Equal(PluginState.Refused, _bench.Shipped(Reader).Open().Of(Name).State);
    }

    [Fact]
    public void A_file_is_read_in_the_readers_worker()
    {
        var catalog = _bench.Shipped(Reader).OpenWithWorkers();

        var read = catalog.ReadFile(Name, Encoding.UTF8.GetBytes(Marsh));

        Assert.Empty(read.Diagnostics);
        Assert.Equal("marsh-1", read.Family!.Version.Id);
    }

    [Fact]
    public void A_family_is_written_as_a_file_that_reads_back()
    {
        var catalog = _bench.Shipped(Reader).OpenWithWorkers();
        var family = catalog.ReadFile(Name, Encoding.UTF8.GetBytes(Marsh)).Family!;

        var again = catalog.ReadFile(Name, catalog.WriteFile(family));

        Assert.Empty(again.Diagnostics);
        Assert.Equal("9.9 to 10.1", Words(again.Family!));
    }

    [Fact]
    public void Without_a_reader_a_file_is_answered_with_words()
    {
        var read = _bench.Open().ReadFile(Name, Encoding.UTF8.GetBytes(Marsh));

        Assert.Equal("reader-failed", Assert.Single(read.Diagnostics).Code);
    }

    public void Dispose() => _bench.Dispose();

    private static string Words(Family family) =>
        family.Kinds.Single().Characteristics.Single().New is { Low: Exact low, High: Exact high } ? FormattableString.Invariant($"{low.Value.InMillimetres:0.0} to {high.Value.InMillimetres:0.0}") : "";

    private async Task<PluginCatalog> Approved(string yaml, Func<PluginHostOptions, PluginHostOptions>? change = null)
    {
        var catalog = Open(yaml, change);
        await catalog.Approve(Name, catalog.Of(Name).Sha256!, "Ada", CancellationToken.None);
        return catalog;
    }

    private PluginCatalog Open(string yaml, Func<PluginHostOptions, PluginHostOptions>? change = null)
    {
        Write(yaml);
        return _bench.Shipped(Reader).Open(change);
    }

    private void Write(string yaml) => File.WriteAllText(Path.Combine(_bench.FamilyFolder, Name), yaml);
}
