using System.CommandLine;
using System.Globalization;
using RebuildApi.Server.Access;
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
        return ToldCommand.OnShop("restore", "Checks a backup and puts it in the place of the shop's database; what stood there is kept beside it. The service must not run.", """
            Examples:
              restore data/backups/20260302T020000000Z --dry-run
              restore data/backups/20260302T020000000Z --person Ada
            """, [backup, dryRun, person],
            (shop, asked, cancellation) => Run(
                shop, asked.GetValue(backup)!, asked.GetValue(dryRun), asked.GetValue(person) ?? Environment.UserName, asked.InvocationConfiguration.Output, cancellation));
    }

    internal static async Task<int> Run(ShopFolder shop, string backup, bool dryRun, string person, TextWriter output, CancellationToken cancellation)
    {
        shop.RequireFile();
        Directory.CreateDirectory(shop.Path);
        var from = shop.Backups(null).Check(backup, new ChainQuestion(Progress: Bar.On("entries")), cancellation);
        if (!from.Verified)
        {
            await output.WriteLineAsync($"{backup} can't be restored:");
            foreach (var problem in from.Problems)
                await output.WriteLineAsync($"  {problem}");
            return 1;
        }

        var restore = new BackupRestore(shop.Settings.Attachments, shop.Database);
        var steps = await restore.Steps(from);
        await output.WriteLineAsync(dryRun ? "The backup verifies. Restoring it would:" : "The backup verifies. Restoring it:");
        foreach (var step in steps)
            await output.WriteLineAsync($"  {step}");
        if (dryRun)
            return 0;
        await Say(await restore.Run(from, person, cancellation), output);
        await RenewAdministrator(shop, output, cancellation);
        await output.WriteLineAsync("Done.");
        return 0;
    }

    private static async Task Say(Restored done, TextWriter output)
    {
        if (!done.Revoked.IsEmpty)
            await output.WriteLineAsync($"Revoked: {string.Join(", ", done.Revoked)}.");
        await output.WriteLineAsync(done.Known
            ? string.Create(CultureInfo.InvariantCulture, $"Texts erased again in {done.Erased} entries.")
            : "What was erased after the backup was made stands again: erase it again.");
    }

    // A shop that has tokens and no administrator's any more could issue none over the network.
    private static async Task RenewAdministrator(ShopFolder shop, TextWriter output, CancellationToken cancellation)
    {
        await using var store = shop.OpenToWrite();
        var (tokens, now) = (await store.All<AccessToken>(ShopFilter.Every, cancellation), TimeProvider.System.GetUtcNow());
        if (tokens.IsEmpty || tokens.Any(t => t.Scope == Scope.Administrator.Word() && t.CountsAt(now)))
            return;
        var name = "administrator-" + now.UtcDateTime.ToString("yyyyMMdd'T'HHmmss", CultureInfo.InvariantCulture);
        var secret = await TokenDesk.Issue(store, new NewToken(name, Scope.Administrator), TimeProvider.System, cancellation);
        await output.WriteLineAsync($"A new administrator's token, {name}, shown this once:\n  {secret}\nIssue the others anew with it: token add NAME --scope bench");
    }
}
