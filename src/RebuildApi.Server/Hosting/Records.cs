using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server;

/// <summary>Where the records of the shop are, by the settings.</summary>
public static class Records
{
    /// <summary>How a store is opened on them.</summary>
    public static StoreOptions Of(ServerOptions options, TimeProvider time) => new(Path.Combine(options.DataFolder, BackupShelf.Database), time)
    {
        Database = string.IsNullOrWhiteSpace(options.Database) ? null : options.Database,
        Shop = options.Shop,
    };

    /// <summary>The backups of them.</summary>
    public static BackupShelf Backups(ServerOptions options, string? folder, TimeProvider time) =>
        new(folder ?? options.BackupFolder ?? Path.Combine(options.DataFolder, "backups"), options.Attachments, Of(options, time));

    /// <summary>Holds the settings against what can be used, without connecting.</summary>
    /// <exception cref="FormatException">They can't; the words name what is wrong.</exception>
    public static void Check(ServerOptions options)
    {
        if (!IdAttribute.IsId(options.Shop))
            throw new FormatException($"Rebuild:Shop is {options.Shop}; letters, digits, dots, hyphens and underscores are taken, up to 64.");
        if (Of(options, TimeProvider.System).Database is not { } database)
            return;
        try
        {
            Stores.CheckDatabase(database);
        }
        catch (FormatException e)
        {
            throw new FormatException($"Rebuild:Database can't be used: {e.Message} It is written like Host=127.0.0.1;Port=5432;Database=rebuild;Username=rebuild;Password=….", e);
        }
    }
}
