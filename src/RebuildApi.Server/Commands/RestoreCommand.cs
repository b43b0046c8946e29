using System.CommandLine;
using RebuildApi.Storage;

namespace RebuildApi.Server.Commands;

/// <summary><c>restore</c>: puts a backup in the place of what stands there, and keeps that.</summary>
public static class RestoreCommand
{
    /// <summary>The command.</summary>
    public static Command Make()
    {
        var backup = new Argument<string>("backup") { Description = "The backup's folder, or a copy of a database." };
        var dryRun = new Option<bool>("--dry-run") { Description = "Check the backup and say exactly what would be done; touch nothing." };
        var person = new Option<string?>("--person") { Description = "Who restores it, for the record; the user of this machine when not said.", HelpName = "name" };
        var data = ShopFolder.Option();
        var command = new ToldCommand("restore", "Checks a backup and puts it in the place of the shop's database; what stood there is kept beside it. The service must not run.", """
            Examples:
              restore data/backups/20260302T020000000Z --dry-run
              restore data/backups/20260302T020000000Z --person Ada
            """)
        {
            backup, dryRun, person, data,
        };
        command.SetAction((asked, cancellation) => Run(
            ShopFolder.Of(asked.GetValue(data)), asked.GetValue(backup)!, asked.GetValue(dryRun), asked.GetValue(person) ?? Environment.UserName, asked.InvocationConfiguration.Output, cancellation));
        return command;
    }

    internal static async Task<int> Run(ShopFolder shop, string backup, bool dryRun, string person, TextWriter output, CancellationToken cancellation)
    {
        Directory.CreateDirectory(shop.Path);
        var from = shop.Backups(null).Check(backup, new ChainQuestion(Progress: Bar.On("entries")), cancellation);
        if (!from.Verified)
        {
            await output.WriteLineAsync($"{backup} can't be restored:");
            foreach (var problem in from.Problems)
                await output.WriteLineAsync($"  {problem}");
            return 1;
        }

        var restore = new BackupRestore(shop.Path, shop.Database);
        var steps = restore.Steps(from);
        await output.WriteLineAsync(dryRun ? "The backup verifies. Restoring it would:" : "The backup verifies. Restoring it:");
        foreach (var step in steps)
            await output.WriteLineAsync($"  {step}");
        if (dryRun)
            return 0;
        await restore.Run(from, person, cancellation);
        await output.WriteLineAsync("Done.");
        return 0;
    }
}
