using System.CommandLine;
using System.Text;
using RebuildApi.Contracts;
using RebuildApi.Engine.Families;
using RebuildApi.Engine.Snapshots;
using RebuildApi.PluginHost;
using RebuildApi.Server.Commands;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Authoring;

/// <summary>What somebody who writes a family asks of the program, without a service running.</summary>
public static class FamilyCommand
{
    private const string Reader = "family-files";

    private static Argument<string> File() => new("file") { Description = "The family file." };

    /// <summary>What is asked of a family that is there.</summary>
    public static Command Make()
    {
        var (check, sheet, id) = (File(), File(), new Argument<string>("id") { Description = "The family." });
        var checking = new ToldCommand("check", "Says what is wrong or doubtful in a family file; ends with 1 when something is wrong.", "Example:\n  family check my-gearbox.yaml") { check };
        var printing = new ToldCommand("sheet", "Prints the teardown sheet of a family file as CSV.", "Example:\n  family sheet my-gearbox.yaml > sheet.csv") { sheet };
        var exporting = new ToldCommand("export", "Prints a loaded family as a family file.", "Example:\n  family export brackenmere-4 > brackenmere-4.yaml") { id };
        checking.SetAction((asked, _) => WithReader(catalog => Check(catalog, asked.GetValue(check)!, asked.InvocationConfiguration.Output)));
        printing.SetAction((asked, _) => WithReader(catalog => Sheet(catalog, asked.GetValue(sheet)!, asked.InvocationConfiguration.Output)));
        exporting.SetAction((asked, _) => WithCatalog(catalog => Export(catalog, asked.GetValue(id)!, asked.InvocationConfiguration.Output, asked.InvocationConfiguration.Error)));
        return new Command("family", "What somebody who writes a family asks, without a service running.") { checking, printing, exporting };
    }

    /// <summary>Something to start from.</summary>
    public static Command MakeNew()
    {
        var sort = new Argument<string>("sort") { Description = "yaml for a family file, code for a plug-in project with a test." };
        var id = new Argument<string>("id") { Description = "The new family's id." };
        var folder = new Argument<string>("folder") { Description = "Where to.", DefaultValueFactory = _ => "." };
        sort.AcceptOnlyFromAmong("yaml", "code");
        var family = new ToldCommand("family", "Writes a family to start from.", "Examples:\n  new family yaml my-gearbox\n  new family code my-gearbox plugins") { sort, id, folder };
        family.SetAction((asked, _) => Scaffold.Write(asked.GetValue(sort)!, asked.GetValue(id)!, asked.GetValue(folder)!, asked.InvocationConfiguration.Output));
        return new Command("new", "Something to start from.") { family };
    }

    private static async Task<int> Check(PluginCatalog catalog, string file, TextWriter output)
    {
        var read = catalog.ReadFile(Path.GetFileName(file), await System.IO.File.ReadAllBytesAsync(file));
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
        var read = catalog.ReadFile(Path.GetFileName(file), await System.IO.File.ReadAllBytesAsync(file));
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
            System.IO.File.Copy(file, Path.Combine(copy, Path.GetFileName(file)));
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
