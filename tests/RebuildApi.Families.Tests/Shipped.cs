namespace RebuildApi.Families.Tests;

/// <summary>The families that ship as plug-ins.</summary>
internal static class Shipped
{
    public static ImmutableArray<IFamilyPlugin> Plugins { get; } = [new Brackenmere4.BrackenmerePlugin(), new Ostrand5.OstrandPlugin(), new Kestermere6.KestermerePlugin()];

    public static ImmutableArray<Family> All { get; } = [.. Plugins.SelectMany(p => p.Declare())];

    public static TheoryData<string> Ids => [.. All.Select(f => f.Version.Id)];

    public static Family Of(string id) => All.Single(f => f.Version.Id == id);
}
