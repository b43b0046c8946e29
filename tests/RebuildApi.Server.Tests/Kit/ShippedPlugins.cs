using RebuildApi.Engine.Families;
using RebuildApi.PluginHost;

namespace RebuildApi.Server.Tests.Kit;

/// <summary>
/// The shipped plug-ins, taken up once for all tests: loading them is proven elsewhere, and a process for each test would only make the run slow.
/// </summary>
public static class ShippedPlugins
{
    private static readonly Lazy<PluginCatalog> Opened = new(Open);

    public static IPluginCatalog Catalog => Opened.Value;

    private static PluginCatalog Open()
    {
        var data = Directory.CreateTempSubdirectory("rebuild-server-test-plugins-").FullName;
        var catalog = PluginCatalog.Open(PluginHostOptions.Beside(AppContext.BaseDirectory, data, FamilyCheck.Check) with { DeclareBudget = TimeSpan.FromMinutes(5) });
        AppDomain.CurrentDomain.ProcessExit += (_, _) => catalog.Dispose();
        return catalog;
    }
}
