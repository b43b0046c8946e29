using System.Security.Cryptography;
using System.Text;
using Microsoft.Extensions.Time.Testing;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost.Tests;

/// <summary>A drop folder of its own for one test, and a catalog over it.</summary>
internal sealed class PluginBench : IDisposable
{
    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("plugin-bench-");
    private readonly List<PluginCatalog> _catalogs = [];

    public FakeTimeProvider Time { get; } = new(new DateTimeOffset(2026, 3, 2, 12, 0, 0, TimeSpan.Zero));

    public string Drop => Directory.CreateDirectory(Path.Combine(_root.FullName, "plugins")).FullName;

    public string FamilyFolder => Directory.CreateDirectory(Path.Combine(_root.FullName, "data", "families")).FullName;

    public string ShippedList => Path.Combine(_root.FullName, "shipped.txt");

    public string ApprovalsFile => Path.Combine(_root.FullName, "data", "approved-plugins.txt");

    public string Shadow => Path.Combine(_root.FullName, "data", "shadow");

    public PluginHostOptions Options => new()
    {
        PluginFolders = [Drop],
        ApprovedLists = [ShippedList],
        ApprovalsFile = ApprovalsFile,
        ShadowFolder = Shadow,
        FamilyFolders = [FamilyFolder],
        CheckFamily = _ => [],
        Time = Time,
        // A busy machine must not make a good plug-in look slow.
        DeclareBudget = TimeSpan.FromMinutes(1),
        LongestHookBudget = TimeSpan.FromMinutes(1),
        ReadBudget = TimeSpan.FromMinutes(2),
    };

    /// <summary>Puts a plug-in of the shelf into the drop folder and on the shipped list.</summary>
    public PluginBench Shipped(params string[] ids)
    {
        foreach (var id in ids)
            Dropped(id).Listed(id);
        return this;
    }

    /// <summary>Puts a plug-in of the shelf into the drop folder.</summary>
    public PluginBench Dropped(string id)
    {
        foreach (var file in Directory.EnumerateFiles(Shelf.FolderOf(id), "*.dll"))
            File.Copy(file, Path.Combine(FolderFor(id), Path.GetFileName(file)), overwrite: true);
        return this;
    }

    /// <summary>Puts any bytes into the drop folder as a plug-in's assembly.</summary>
    public PluginBench Dropped(string id, byte[] assembly, string? fileName = null)
    {
        File.WriteAllBytes(Path.Combine(FolderFor(id), fileName ?? id + ".dll"), assembly);
        return this;
    }

    /// <summary>Puts what lies in a plug-in's folder on the shipped list, file by file as <c>sha256sum</c> prints it.</summary>
    public PluginBench Listed(string id)
    {
        var lines = Directory.EnumerateFiles(FolderFor(id), "*.dll").Select(f => $"{Sha256Of(File.ReadAllBytes(f))}  {id}/{Path.GetFileName(f)}");
        File.AppendAllLines(ShippedList, lines);
        return this;
    }

    /// <summary>The program that runs as a worker, with a mark that tells this bench's workers from all others.</summary>
    public WorkerCommand Worker { get; } = new("dotnet", [Shelf.PathOf("a-service"), "plugin-worker", "mark-" + Guid.CreateVersion7().ToString("N")]);

    public string Root => _root.FullName;

    public string FolderFor(string id) => Directory.CreateDirectory(Path.Combine(Drop, id)).FullName;

    public PluginCatalog Open(Func<PluginHostOptions, PluginHostOptions>? change = null)
    {
        var catalog = PluginCatalog.Open((change ?? (o => o))(Options));
        _catalogs.Add(catalog);
        return catalog;
    }

    /// <summary>A catalog whose plug-ins run in worker processes.</summary>
    public PluginCatalog OpenWithWorkers(Func<PluginHostOptions, PluginHostOptions>? change = null) =>
        Open(o => (change ?? (same => same))(o with { Worker = Worker }));

    public void Dispose()
    {
        _catalogs.ForEach(c => c.Dispose());
        _root.Delete(recursive: true);
    }

    public static string Sha256Of(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    public static string Sha256Of(string text) => Sha256Of(Encoding.UTF8.GetBytes(text));
}

internal static class Statuses
{
    public static PluginStatus Of(this IPluginCatalog catalog, string id) => catalog.Plugins.Single(p => p.Id == id);

    public static HookAnswerResult Run(this IPluginCatalog catalog, string family, string hook, UnitSnapshot? snapshot = null)
    {
        var declared = catalog.Find(family)!.Family;
        return catalog.RunHook(family, declared.Hooks.Single(h => h.Id == hook), snapshot ?? TestKit.SnapshotBuilder.Complete(declared).Snapshot);
    }

    public static string[] Codes(this HookAnswerResult result) => [.. result.Dropped.Select(r => r.Code)];
}
