using System.Text;
using RebuildApi.Contracts;
using RebuildApi.Engine.Families;
using RebuildApi.Engine.Snapshots;
using RebuildApi.PluginHost;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Authoring;

/// <summary>What somebody who writes a family asks of the program, without a service running.</summary>
public static class FamilyCommand
{
    private const string Reader = "family-files";

    private const string Usage = """
        usage: family check FILE            say what is wrong or doubtful in a family file
               family sheet FILE            print the teardown sheet of a family file as CSV
               family export ID             print a loaded family as a family file
               new family yaml ID [FOLDER]  write a family file to start from
               new family code ID [FOLDER]  write a plug-in project to start from, with a test

        """;

    /// <summary>Runs a command.</summary>
    /// <returns>0 when all is well, 1 when the family has errors or can't be had, 2 when the arguments are not understood.</returns>
    public static async Task<int> Run(string[] args, TextWriter output, TextWriter errors)
    {
        try
        {
            return args switch
            {
                ["family", "check", var file] => await WithReader(catalog => Check(catalog, file, output)),
                ["family", "sheet", var file] => await WithReader(catalog => Sheet(catalog, file, output)),
                ["family", "export", var id] => await WithCatalog(catalog => Export(catalog, id, output, errors)),
                ["new", "family", var sort and ("yaml" or "code"), var id] => await Scaffold.Write(sort, id, ".", output),
                ["new", "family", var sort and ("yaml" or "code"), var id, var folder] => await Scaffold.Write(sort, id, folder, output),
                _ => await Misunderstood(errors),
            };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            await errors.WriteLineAsync(e.Message);
            return 1;
        }
    }

    private static async Task<int> Misunderstood(TextWriter errors)
    {
        await errors.WriteAsync(Usage);
        return 2;
    }

    private static async Task<int> Check(PluginCatalog catalog, string file, TextWriter output)
    {
        var read = catalog.ReadFile(Path.GetFileName(file), await File.ReadAllBytesAsync(file));
        return await Report(read, output);
    }

    private static async Task<int> Report(ReadResult read, TextWriter output)
    {
        foreach (var d in read.Diagnostics)
            await output.WriteLineAsync(FormattableString.Invariant($"{d.File}:{d.Line}:{d.Column}: {(d.IsError ? "error" : "doubt")} {d.Code} {d.Field}: {d.Message}"));
        var wrong = read.Diagnostics.Count(d => d.IsError);
        await output.WriteLineAsync(FormattableString.Invariant($"{read.Family?.Version.Id ?? "no family"}: {wrong} errors, {read.Diagnostics.Length - wrong} doubts"));
        return wrong == 0 ? 0 : 1;
    }

    private static async Task<int> Sheet(PluginCatalog catalog, string file, TextWriter output)
    {
        var read = catalog.ReadFile(Path.GetFileName(file), await File.ReadAllBytesAsync(file));
        if (read.Family is not { } family || read.Diagnostics.Any(d => d.IsError))
            return await Report(read, output);
        using var table = new MemoryStream();
        var rows = new CsvTable<SheetRowWire>(',', bom: false).Rows(table);
        var all = new Sheet(new FamilyIndex(family), Display.For(null)).Rows();
        await rows.Begin(CancellationToken.None);
        foreach (var row in all)
            await rows.Write(row, CancellationToken.None);
        await rows.End(all.Length, CancellationToken.None);
        await output.WriteAsync(Encoding.UTF8.GetString(table.ToArray()));
        return 0;
    }

    private static async Task<int> Export(PluginCatalog catalog, string id, TextWriter output, TextWriter errors)
    {
        if (catalog.Find(id) is not { } family)
        {
            await errors.WriteLineAsync($"There is no family {id}; there are {string.Join(", ", catalog.Families.Select(f => f.Family.Version.Id))}.");
            return 1;
        }

        await output.WriteAsync(Encoding.UTF8.GetString(catalog.WriteFile(family.Family)));
        return 0;
    }

    /// <summary>The reader of family files alone: the other plug-ins would only be waited for.</summary>
    private static Task<int> WithReader(Func<PluginCatalog, Task<int>> work) => WithCatalog(work, (options, data) =>
    {
        var copy = Directory.CreateDirectory(Path.Combine(data, "plugins", Reader)).FullName;
        foreach (var file in Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "plugins", Reader)))
            File.Copy(file, Path.Combine(copy, Path.GetFileName(file)));
        return options with { PluginFolders = [Path.Combine(data, "plugins")] };
    });

    /// <summary>The shipped plug-ins, over a folder that goes again.</summary>
    private static Task<int> WithCatalog(Func<PluginCatalog, Task<int>> work) => WithCatalog(work, (options, _) => options);

    private static async Task<int> WithCatalog(Func<PluginCatalog, Task<int>> work, Func<PluginHostOptions, string, PluginHostOptions> change)
    {
        var data = Directory.CreateTempSubdirectory("rebuild-family-");
        try
        {
            var usual = PluginHostOptions.Beside(AppContext.BaseDirectory, data.FullName, FamilyCheck.Check) with
            {
                CheckUnproven = LoadCheck.Check,
                Worker = WorkerCommand.Of(typeof(FamilyCommand).Assembly, RebuildApplication.WorkerVerb),
            };
            using var catalog = PluginCatalog.Open(change(usual, data.FullName));
            return await work(catalog);
        }
        finally
        {
            data.Delete(recursive: true);
        }
    }
}
