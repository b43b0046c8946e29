using System.CommandLine;
using RebuildApi.PluginHost;
using RebuildApi.Server.Authoring;
using RebuildApi.Server.Checks;
using RebuildApi.Server.Commands;
using RebuildApi.Server.Demo;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server;

/// <summary>The commands of the one executable. Exit codes: 0 done, 1 done and something is wrong with what was looked at, 2 not done, with the reason in words.</summary>
public static class CommandLine
{
    private const int NotDone = 2;

    /// <summary>Runs what was asked for; without a command, the service.</summary>
    public static Task<int> Run(string[] args) => Run(args, Console.Out, Console.Error);

    /// <summary>The same with other places to write to.</summary>
    public static async Task<int> Run(string[] args, TextWriter output, TextWriter errors)
    {
        var root = Root();
        var asked = root.Parse(IsBare(args) ? [ServeCommand.Name, .. args] : args);
        if (asked.Errors.Count > 0)
            return await Misunderstood(root, asked, errors);
        try
        {
            // The service stops by itself when it is told to, and drains; the others may be cut off.
            return await asked.InvokeAsync(new InvocationConfiguration { Output = output, Error = errors, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null });
        }
        catch (Exception e) when (e is StorageUnavailableException or SettingsException or IOException or UnauthorizedAccessException or PluginNotFoundException or PluginChangedException
            or NotSupportedException or ArgumentException or InvalidDataException)
        {
            await errors.WriteLineAsync(e.Message);
            return NotDone;
        }
        catch (OperationCanceledException)
        {
            await errors.WriteLineAsync("Stopped.");
            return NotDone;
        }
    }

    /// <summary>All commands.</summary>
    public static RootCommand Root()
    {
        var root = new RootCommand("Rebuild API: takes in gearboxes, findings and measurements, and answers with reasons. Without a command it serves.")
        {
            ServeCommand.Make(),
            DemoCommand.Make(),
            BackupCommand.Make(),
            RestoreCommand.Make(),
            VerifyCommand.Make(),
            ExportCommand.Make(),
            ImportCommand.Make(),
            PluginCommand.Make(),
            TokenCommand.Make(),
            EraseCommand.Make(),
            CheckCommand.Make(),
            FamilyCommand.Make(),
            FamilyCommand.MakeNew(),
        };
        ToldCommand.TellIn(root);
        return root;
    }

    // Settings such as --Rebuild:Listen=… may come without the word serve before them.
    private static bool IsBare(string[] args) =>
        args.Length == 0 || (args[0].StartsWith("--", StringComparison.Ordinal) && args[0] is not ("--help" or "--version"));

    private static async Task<int> Misunderstood(RootCommand root, ParseResult asked, TextWriter errors)
    {
        foreach (var error in asked.Errors.Where(e => asked.UnmatchedTokens.Count == 0 || asked.UnmatchedTokens.Any(t => e.Message.Contains(t, StringComparison.Ordinal))))
            await errors.WriteLineAsync(error.Message);
        var near = asked.CommandResult.Command;
        var names = near.Subcommands.Select(c => c.Name).ToArray();
        if (asked.UnmatchedTokens is [var first, ..] && names.Length > 0)
            await errors.WriteLineAsync(Nearest.Fix(first, names) ?? $"There are: {string.Join(", ", names)}.");
        await errors.WriteLineAsync($"Ask for help with: {(near == root ? "" : near.Name + " ")}--help");
        return NotDone;
    }
}
