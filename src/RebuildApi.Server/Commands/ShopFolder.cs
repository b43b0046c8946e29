using System.CommandLine;
using RebuildApi.Storage;

namespace RebuildApi.Server.Commands;

/// <summary>The shop that a command works on: where the service would find it, unless a folder is named.</summary>
internal sealed class ShopFolder(ServerOptions options)
{
    /// <summary>The option that names another folder.</summary>
    public static Option<string?> Option() => new("--data")
    {
        Description = "The shop's data folder with the records in a file; what the service's settings name when not said.",
        HelpName = "folder",
    };

    /// <summary>The shop that was asked for.</summary>
    public static ShopFolder Of(string? folder) =>
        new(RebuildApplication.Settings(folder is null ? [] : [Said(nameof(ServerOptions.DataFolder), folder), Said(nameof(ServerOptions.Database), "")]));

    public string Path => options.DataFolder;

    public ServerOptions Settings => options;

    public StoreOptions Database => Records.Of(options, TimeProvider.System);

    /// <summary>Opens it for reading, whether or not the service runs.</summary>
    public IStore OpenToRead()
    {
        RequireDatabase();
        return Stores.Open(Database with { ReadOnly = true });
    }

    /// <summary>Opens it for a change that the service, when it runs, sees too.</summary>
    public IStore OpenToWrite()
    {
        RequireDatabase();
        return Stores.Open(Database);
    }

    public BackupShelf Backups(string? folder) => Records.Backups(options, folder, TimeProvider.System);

    /// <summary>Refuses what only works on a file.</summary>
    public void RequireFile()
    {
        if (Database.Database is not null)
        {
            throw new InvalidOperationException(
                "The records are in PostgreSQL, and a backup holds a file. To put it there: export FILE --data BACKUP, then import FILE into a database that has nothing of this shop.");
        }
    }

    private static string Said(string setting, string value) => $"--{ServerOptions.Section}:{setting}={value}";

    private void RequireDatabase()
    {
        if (Database.Database is null && !File.Exists(Database.Path))
            throw new FileNotFoundException($"There is no database {System.IO.Path.GetFullPath(Database.Path)}; name the shop's folder with --data.");
    }
}
