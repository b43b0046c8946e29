using System.Reflection;

namespace RebuildApi.PluginHost.Tests;

/// <summary>Plug-ins that were built on their own, as a stranger would build them.</summary>
internal static class Shelf
{
    /// <summary>The folder of one of them as its build left it.</summary>
    public static string FolderOf(string id) => Path.GetDirectoryName(PathOf(id))!;

    /// <summary>The assembly of one of them.</summary>
    public static string PathOf(string id) => typeof(Shelf).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(a => a.Key == "shelf/" + id).Value!;
}
