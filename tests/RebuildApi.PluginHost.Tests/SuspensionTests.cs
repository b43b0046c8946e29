namespace RebuildApi.PluginHost.Tests;

public sealed class SuspensionTests : IDisposable
{
    private readonly PluginBench _bench = new();

    [Fact]
    public void A_plugin_whose_rules_keep_failing_is_left_alone_and_tried_again_later()
    {
        var catalog = _bench.Shipped("throws-in-hook").Open();
        for (var call = 0; call < 3; call++)
            catalog.Run("shelf-throws", "breaks");

        var whileSuspended = (catalog.Of("throws-in-hook").State, Codes: catalog.Run("shelf-throws", "breaks").Codes());
        _bench.Time.Advance(TimeSpan.FromSeconds(31));
        var afterwards = catalog.Run("shelf-throws", "breaks").Codes();

        Assert.Equal(PluginState.Suspended, whileSuspended.State);
        Assert.Equal(["hook-suspended"], whileSuspended.Codes);
        Assert.Equal(["hook-threw"], afterwards);
    }

    [Fact]
    public void A_second_suspension_lasts_longer_than_the_first()
    {
        var catalog = _bench.Shipped("throws-in-hook").Open();
        for (var call = 0; call < 3; call++)
            catalog.Run("shelf-throws", "breaks");
        _bench.Time.Advance(TimeSpan.FromSeconds(31));
        catalog.Run("shelf-throws", "breaks");

        _bench.Time.Advance(TimeSpan.FromSeconds(31));

        Assert.Equal(["hook-suspended"], catalog.Run("shelf-throws", "breaks").Codes());
    }

    [Fact]
    public void The_families_of_a_suspended_plugin_stand()
    {
        var catalog = _bench.Shipped("throws-in-hook").Open();
        for (var call = 0; call < 3; call++)
            catalog.Run("shelf-throws", "breaks");

        Assert.NotNull(catalog.Find("shelf-throws"));
    }

    public void Dispose() => _bench.Dispose();
}
