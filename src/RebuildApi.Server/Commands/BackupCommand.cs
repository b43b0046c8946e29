using System.CommandLine;
using System.Globalization;

namespace RebuildApi.Server.Commands;

/// <summary><c>backup</c>: copies everything, whether or not the service runs, and checks the copy.</summary>
public static class BackupCommand
{
    /// <summary>The command.</summary>
    public static Command Make()
    {
        var to = new Option<string?>("--to") { Description = "The folder that backups lie in; the one of the settings when not said.", HelpName = "folder" };
        return ToldCommand.OnShop("backup", "Copies the database and the attachments as they stand at one moment into a folder of their own, opens the copy and checks all of it. The service may run.", """
            Examples:
              backup
              backup --to /mnt/stick/backups
            """, [to],
            (shop, asked, cancellation) => Run(shop, asked.GetValue(to), asked.InvocationConfiguration.Output, cancellation));
    }

    internal static async Task<int> Run(ShopFolder shop, string? to, TextWriter output, CancellationToken cancellation)
    {
        await using var store = shop.OpenToRead();
        var made = await shop.Backups(to).Make(store, Environment.UserName, cancellation);
        var said = made.Manifest!;
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{Path.GetFullPath(made.Path)}\nchecked  {said.Database.Bytes} bytes, {said.Attachments.Length} attachments, schema {said.Schema}"));
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"entries  {said.Entries}\nhead     {said.Head}"));
        return 0;
    }
}
