using System.CommandLine;
using RebuildApi.Storage;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Server.Commands;

/// <summary>The shop that a command works on: where the service would find it, unless a folder is named.</summary>
internal sealed class ShopFolder(ServerOptions options)
{
    /// <summary>The option that names another folder.</summary>
    public static Option<string?> Option() => new("--data")
    {
        Description = "The shop's data folder; the one that the service's settings name when not said.",
        HelpName = "folder",
    };

    /// <summary>The shop that was asked for.</summary>
    public static ShopFolder Of(string? folder) =>
        new(RebuildApplication.Settings(folder is null ? [] : [$"--{ServerOptions.Section}:{nameof(ServerOptions.DataFolder)}={folder}"]));

    public string Path => options.DataFolder;

    public ServerOptions Settings => options;

    public StoreOptions Database => new(System.IO.Path.Combine(options.DataFolder, BackupShelf.Database), TimeProvider.System);

    /// <summary>Opens it for reading, whether or not the service runs.</summary>
    public SqliteStore OpenToRead()
    {
        RequireDatabase();
        return SqliteStore.Open(Database with { ReadOnly = true });
    }

    /// <summary>Opens it for a change that the service, when it runs, sees too.</summary>
    public SqliteStore OpenToWrite()
    {
        RequireDatabase();
        return SqliteStore.Open(Database);
    }

    public BackupShelf Backups(string? folder) => BackupShelf.Of(Path, folder ?? options.BackupFolder, Database);

    private void RequireDatabase()
    {
        if (!File.Exists(Database.Path))
            throw new FileNotFoundException($"There is no database {System.IO.Path.GetFullPath(Database.Path)}; name the shop's folder with --data.");
    }
}
