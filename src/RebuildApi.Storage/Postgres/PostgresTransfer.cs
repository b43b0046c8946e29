using System.Data;
using System.Security.Cryptography;
using System.Text;
using Dapper;
using Npgsql;
using RebuildApi.Storage.Sql;
using RebuildApi.Storage.Transfer;

namespace RebuildApi.Storage.Postgres;

/// <summary>A shop in a shared database, passed on and taken over.</summary>
internal static class PostgresTransfer
{
    public static ExportReport Export(StoreOptions options, Func<PortableExport, ExportReport> say) => Told(() =>
    {
        using var connection = Opened(options with { ReadOnly = true });
        using var moment = connection.BeginTransaction(IsolationLevel.RepeatableRead);
        return say(new PortableExport(connection, new PostgresCatalogue(connection), PostgresSchema.NumberOf(connection), options.Shop, options.Time));
    });

    /// <summary>
    /// Takes a shop over. Until all of it fits, a mark keeps the service from opening it; one that was cut off goes on, one that does not fit is taken
    /// out again.
    /// </summary>
    public static ExportReport Import(StoreOptions options, PortableHeader header, string first, Func<PortableImport, ExportReport> take) => Told(() =>
    {
        var steps = Migration.Shipped(Migration.Postgres);
        if (header.Schema != steps[^1].Number)
            throw new InvalidDataException(FormattableString.Invariant($"The file fits schema {header.Schema}, the database {steps[^1].Number}. Import it into an empty folder first, which brings it up to date, and export that."));
        using var connection = Opened(options);
        new PostgresSchema(connection, options.Time, steps).Prepare(readOnly: false);
        using var marked = new ImportMark(connection, options.Shop, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(first))));
        marked.Set();
        try
        {
            var catalogue = new PostgresCatalogue(connection);
            var report = take(new PortableImport(connection, catalogue, header, () => []));
            marked.Done();
            Count(connection, catalogue);
            return report;
        }
        catch (InvalidDataException e) when (e.InnerException is not EndOfStreamException)
        {
            marked.Clear();
            throw;
        }
    });

    /// <summary>So that the first questions after it are planned by how many rows there are; PostgreSQL would count them by itself a minute later.</summary>
    private static void Count(NpgsqlConnection connection, PostgresCatalogue catalogue)
    {
        foreach (var table in catalogue.Tables())
            connection.Execute($"ANALYZE \"{table}\"");
    }

    private static NpgsqlConnection Opened(StoreOptions options)
    {
        var connection = PostgresAddress.Own(options);
        connection.Open();
        PostgresFence.Require(connection);
        connection.Execute("SET statement_timeout = 0");
        return connection;
    }

    private static T Told<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        catch (Exception e) when (PostgresFaults.Translate(e) is StorageUnavailableException why && why != e)
        {
            throw why;
        }
    }
}
