using System.Security.Cryptography;
using System.Text;
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

    /// <summary>
    /// It is built beside its place, and moved there once it is whole. One that was cut off stays there under the sum of its file's first line, and goes on; one that does
    /// not fit is removed, and so is what was begun from another file.
    /// </summary>
    public static ExportReport Import(StoreOptions options, PortableHeader header, string first, Func<PortableImport, ExportReport> take)
    {
        if (File.Exists(options.Path))
            throw new IOException($"There is already a database {options.Path}. Name an empty folder.");
        var building = options with { Path = $"{options.Path}.{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(first)))[..16]}{Importing}" };
        Remove(Begun(options.Path).Where(path => !path.StartsWith(building.Path, StringComparison.Ordinal)));
        try
        {
            var report = SqliteStore.Fill(building, header.Schema, connection =>
                take(new PortableImport(connection, new SqliteCatalogue(connection), header, () => FileCheck.Thorough(connection))));
            File.Move(building.Path, options.Path);
            return report;
        }
        catch (InvalidDataException e) when (e.InnerException is not EndOfStreamException)
        {
            Remove(Begun(options.Path));
            throw;
        }
    }

    // With the files that the engine keeps beside a database.
    private static string[] Begun(string path) => Directory.GetFiles(Path.GetDirectoryName(Path.GetFullPath(path))!, $"{Path.GetFileName(path)}*{Importing}*");

    private static void Remove(IEnumerable<string> files)
    {
        foreach (var file in files)
            File.Delete(file);
    }
}
