using Microsoft.Data.Sqlite;
using RebuildApi.Storage.Transfer;

namespace RebuildApi.Storage.Sqlite;

/// <summary>A shop in a file of this engine, passed on and taken over.</summary>
internal static class SqliteTransfer
{
    private const string Importing = ".importing";

    public static ExportReport Export(StoreOptions options, Func<PortableExport, ExportReport> say)
    {
        try
        {
            using var connection = SqliteFile.OpenCopy(options.Path);
            using var moment = connection.BeginTransaction(deferred: true);
            return say(new PortableExport(connection, new SqliteCatalogue(connection), Schema.NumberOf(connection), options.Shop, options.Time));
        }
        catch (SqliteException e)
        {
            throw SqliteFaults.Translate(e);
        }
    }

    /// <summary>It is built beside its place, and moved there once it is whole.</summary>
    public static ExportReport Import(StoreOptions options, PortableHeader header, Func<PortableImport, ExportReport> take)
    {
        if (File.Exists(options.Path))
            throw new IOException($"There is already a database {options.Path}. Name an empty folder.");
        var building = options with { Path = options.Path + Importing };
        var report = SqliteStore.Fill(building, header.Schema, connection =>
            take(new PortableImport(connection, new SqliteCatalogue(connection), header, () => FileCheck.Thorough(connection))));
        File.Move(building.Path, options.Path);
        return report;
    }
}
