using RebuildApi.Contracts;
using RebuildApi.TestKit;

namespace RebuildApi.PluginHost.Tests;

public sealed class GoodPluginTests : IDisposable
{
    private readonly PluginBench _bench = new();

    [Fact]
    public void An_approved_plugin_supplies_its_families()
    {
        var catalog = _bench.Shipped("good-with-hook").Open();

        var status = catalog.Of("good-with-hook");
        Assert.Equal((PluginState.Loaded, "1.0.0", ContractVersion.Current), (status.State, status.Version, status.ContractVersion));
        Assert.Equal("good-with-hook", catalog.Find("shelf-good")!.Plugin);
        Assert.Equal(status.Sha256, catalog.Families.Single().Supplier.Sha256);
    }

    [Fact]
    public void A_hook_is_shown_only_the_parts_of_its_positions()
    {
        var catalog = _bench.Shipped("good-with-hook").Open();
        var snapshot = SnapshotBuilder.Complete(catalog.Find("shelf-good")!.Family)
            .Micrometer("mic-near").Micrometer("mic-far")
            .Reads("left", "width", "mic-near", 1.5m).Reads("far", "width", "mic-far", 1.5m).Snapshot;

        var verdict = catalog.Run("shelf-good", "side", snapshot).Verdicts.Single();

        var shown = verdict.Reasons.Single().Arguments;
        Assert.Equal(("left right", "left", "mic-near"), (shown["components"], shown["measurements"], shown["instruments"]));
    }

    [Fact]
    public void A_hook_s_own_word_on_whose_rules_it_speaks_for_is_not_taken()
    {
        var catalog = _bench.Shipped("good-with-hook").Open();

        var verdict = catalog.Run("shelf-good", "side").Verdicts.Single();

        Assert.Equal(new FamilyVersion("shelf-good", "1.0.0"), verdict.Rules.Family);
        Assert.Equal(catalog.Of("good-with-hook").Sha256, verdict.Rules.HookSha256);
        Assert.Equal(new PluginIdentity("good-with-hook", "1.0.0", catalog.Of("good-with-hook").Sha256!), verdict.Rules.Plugin);
        Assert.Equal("", verdict.InputsSha256);
    }

    [Fact]
    public void An_answer_about_another_rule_is_dropped_and_the_rest_is_kept()
    {
        var result = _bench.Shipped("good-with-hook").Open().Run("shelf-good", "strays");

        Assert.Equal("strays/ours", result.Verdicts.Single().Rule);
        Assert.Equal(("hook-outside-scope", "side"), (result.Dropped.Single().Code, result.Dropped.Single().Arguments["rule"]));
    }

    [Fact]
    public void Two_answers_about_one_rule_are_no_answer()
    {
        var result = _bench.Shipped("good-with-hook").Open().Run("shelf-good", "repeats");

        Assert.Empty(result.Verdicts);
        Assert.Equal(["hook-outside-scope"], result.Codes());
    }

    [Fact]
    public void A_hook_that_the_family_did_not_declare_is_not_asked()
    {
        var catalog = _bench.Shipped("good-with-hook").Open();
        var snapshot = SnapshotBuilder.Complete(catalog.Find("shelf-good")!.Family).Snapshot;

        var result = catalog.RunHook("shelf-good", new HookScope("invented", ["left"], 100), snapshot);

        Assert.Equal(["hook-not-available"], result.Codes());
    }

    [Fact]
    public void A_family_with_an_error_is_not_used_and_says_what_is_wrong()
    {
        var wrong = new Diagnostic("", 0, 0, "/loops/0", "loop-open", "The loop does not close.", IsError: true);

        var catalog = _bench.Shipped("good-with-hook").Open(o => o with { CheckFamily = _ => [wrong] });

        var status = catalog.Of("good-with-hook");
        Assert.Equal(PluginState.Refused, status.State);
        Assert.Equal(wrong, status.RefusedFamilies.Single().Diagnostics.Single());
        Assert.Null(catalog.Find("shelf-good"));
    }

    [Fact]
    public void A_plugin_that_needs_another_assembly_finds_it_in_its_own_folder()
    {
        var catalog = _bench.Shipped("with-dependency").Open();

        Assert.Equal(PluginState.Loaded, catalog.Of("with-dependency").State);
        Assert.NotNull(catalog.Find("shelf-depends"));
    }

    public void Dispose() => _bench.Dispose();
}
