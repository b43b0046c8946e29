using System.Runtime.InteropServices;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost.Tests;

/// <summary>Each bad plug-in comes to the right state with a reason, and the good one beside it goes on.</summary>
public sealed class BadPluginTests : IDisposable
{
    private readonly PluginBench _bench = new();

    [Theory]
    [InlineData("throws-in-constructor", PluginState.Failed, "InvalidOperationException: broke in the constructor")]
    [InlineData("throws-in-declare", PluginState.Failed, "InvalidOperationException: broke while declaring")]
    [InlineData("declares-half", PluginState.Failed, "What it s")]
    [InlineData("says-another-name", PluginState.Refused, "It calls itself good-with-hook but lies in the folder says-another-name.")]
    [InlineData("newer-contract", PluginState.Refused, "It was made for contract 2.0; this service has 1.2. A newer service is needed.")]
    public void Bad_plugin_comes_to_its_state_and_others_go_on(string id, PluginState state, string reason)
    {
        var catalog = _bench.Shipped(id, "good-with-hook").Open();

        var status = catalog.Of(id);
        Assert.Equal(state, status.State);
        Assert.StartsWith(reason, status.Reason, StringComparison.Ordinal);
        Assert.Empty(status.Families);
        AssertOthersGoOn(catalog);
    }

    [Fact]
    public void A_hook_that_throws_costs_only_its_own_answer()
    {
        var catalog = _bench.Shipped("throws-in-hook", "good-with-hook").Open();

        var result = catalog.Run("shelf-throws", "breaks");

        Assert.Empty(result.Verdicts);
        Assert.Equal(["hook-threw"], result.Codes());
        Assert.Equal("InvalidOperationException: broke in the hook", result.Dropped.Single().Arguments["error"]);
        Assert.Equal((PluginState.Loaded, 1), (catalog.Of("throws-in-hook").State, catalog.Of("throws-in-hook").Faults));
        AssertOthersGoOn(catalog);
    }

    [Fact]
    public void A_hook_that_loops_is_given_up_after_its_budget()
    {
        var catalog = _bench.Shipped("loops-in-hook", "good-with-hook").Open();

        var result = catalog.Run("shelf-loops", "loops");

        Assert.Equal(["hook-late"], result.Codes());
        AssertOthersGoOn(catalog);
    }

    [Fact]
    public void A_missing_dependency_is_named_before_any_code_runs()
    {
        _bench.Dropped("with-dependency");
        File.Delete(Path.Combine(_bench.FolderFor("with-dependency"), "a-dependency.dll"));

        var status = _bench.Listed("with-dependency").Shipped("good-with-hook").Open().Of("with-dependency");

        Assert.Equal(PluginState.Refused, status.State);
        Assert.StartsWith("with-dependency.dll needs a-dependency ", status.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void An_own_copy_of_the_contract_is_not_used()
    {
        var catalog = _bench.Shipped("bundles-own-contract").Open();

        Assert.Equal(
            (PluginState.Loaded, "In use. Its own copy of the contract is not: the service's is."),
            (catalog.Of("bundles-own-contract").State, catalog.Of("bundles-own-contract").Reason));
        Assert.Equal(Compatibility.Compatible, catalog.Run("shelf-bundles", "side").Verdicts.Single().Outcome);
    }

    [Fact]
    public void Of_two_families_of_one_id_the_first_counts_and_the_second_says_whose_it_is()
    {
        var catalog = _bench.Shipped("same-family-first", "same-family-second").Open();

        Assert.Equal("same-family-first", catalog.Find("shelf-same")!.Plugin);
        Assert.Equal("same-family-second", catalog.Find("shelf-own")!.Plugin);
        Assert.Equal("plug-in same-family-first supplies a family of that id already.", catalog.Of("same-family-second").RefusedFamilies.Single().Reason);
    }

    [Fact]
    public void Text_named_as_an_assembly_is_refused()
    {
        var catalog = _bench.Dropped("not-an-assembly", "Nothing to see here."u8.ToArray()).Listed("not-an-assembly").Shipped("good-with-hook").Open();

        var status = catalog.Of("not-an-assembly");
        Assert.Equal((PluginState.Refused, "not-an-assembly.dll is not an assembly."), (status.State, status.Reason));
        AssertOthersGoOn(catalog);
    }

    [Theory]
    [InlineData("native-library.dll", PluginState.Refused)]
    [InlineData("helper.so", PluginState.Refused)]
    public void Native_code_is_refused(string fileName, PluginState state)
    {
        var native = Directory.EnumerateFiles(RuntimeEnvironment.GetRuntimeDirectory(), "*System.Native.*").First();

        var catalog = _bench.Dropped("native-library", File.ReadAllBytes(native), fileName).Shipped("good-with-hook").Open();

        Assert.Equal(state, catalog.Of("native-library").State);
        AssertOthersGoOn(catalog);
    }

    [Fact]
    public void An_oversized_assembly_is_refused_unread()
    {
        var folder = _bench.FolderFor("oversized");
        using (var huge = File.Create(Path.Combine(folder, "oversized.dll")))
            huge.SetLength(1L << 32);

        var status = _bench.Open().Of("oversized");

        Assert.Equal((PluginState.Refused, "oversized.dll holds more than 16777216 bytes."), (status.State, status.Reason));
    }

    [Fact]
    public void A_folder_of_ten_thousand_files_is_refused()
    {
        var folder = _bench.FolderFor("crowded");
        foreach (var number in Enumerable.Range(0, 10_000))
            File.Create(Path.Combine(folder, $"{number}.dll")).Dispose();

        var status = _bench.Open().Of("crowded");

        Assert.Equal((PluginState.Refused, "Its folder holds more than 100 files."), (status.State, status.Reason));
    }

    [Theory]
    [InlineData("Upper-Case")]
    [InlineData("two..dots")]
    [InlineData("-leading")]
    [InlineData("with blank")]
    public void A_folder_with_another_sort_of_name_is_refused(string name)
    {
        _bench.FolderFor(name);

        Assert.Equal(PluginState.Refused, _bench.Open().Of(name).State);
    }

    [Fact]
    public void Links_are_refused()
    {
        _bench.Shipped("good-with-hook");
        Directory.CreateSymbolicLink(Path.Combine(_bench.Drop, "linked-folder"), _bench.FolderFor("good-with-hook"));
        File.CreateSymbolicLink(Path.Combine(_bench.FolderFor("linked-file"), "linked-file.dll"), Shelf.PathOf("good-with-hook"));

        var catalog = _bench.Open();

        Assert.Equal("linked-folder is a link.", catalog.Of("linked-folder").Reason);
        Assert.Equal("linked-file.dll is a link.", catalog.Of("linked-file").Reason);
        AssertOthersGoOn(catalog);
    }

    [Theory]
    [InlineData("../good-with-hook")]
    [InlineData("good-with-hook/../good-with-hook")]
    [InlineData("..")]
    [InlineData("")]
    [InlineData("/")]
    public async Task A_path_is_no_plugin_s_id(string id)
    {
        var catalog = _bench.Shipped("good-with-hook").Open();

        await Assert.ThrowsAsync<PluginNotFoundException>(() => catalog.Reload(id, CancellationToken.None));
    }

    private static void AssertOthersGoOn(PluginCatalog catalog) =>
        Assert.Equal(Compatibility.Compatible, catalog.Run("shelf-good", "side").Verdicts.Single().Outcome);

    public void Dispose() => _bench.Dispose();
}
