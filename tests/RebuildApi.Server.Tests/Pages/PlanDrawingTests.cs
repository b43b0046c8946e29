using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Pages;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.Server.Wire.Shop;

namespace RebuildApi.Server.Tests.Pages;

/// <summary>What the drawing of a plan says when there is none.</summary>
public sealed class PlanDrawingTests
{
    [Theory]
    [InlineData("impossible", "There is no plan: something stands in the way.")]
    [InlineData("unknown", "Time ran out before a plan was found")]
    public void A_search_that_was_stopped_is_not_called_a_gearbox_without_a_plan(string status, string words)
    {
        var family = new FamilyIndex(ShippedPlugins.Catalog.Find(ShopServer.Family)!.Family);
        var plan = new PlanWire("p1", "u1", "least-cost", status, new MoneyWire(0, "EUR"), null, 0, 0, [], [], [], [], [], [], [], [], [], "Ada", DateTimeOffset.UnixEpoch, "", "", null!, []);

        Assert.Contains(words, new PlanDrawing(plan, family, m => m.Currency, PageWords.English).Draw().Inside, StringComparison.Ordinal);
    }
}
