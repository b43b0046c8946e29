using System.Text;
using Microsoft.Data.Sqlite;
using RebuildApi.Storage.Sqlite;
using RebuildApi.Storage.Transfer;

namespace RebuildApi.Storage;

/// <summary>What a portable file holds.</summary>
/// <param name="Rows">How many rows.</param>
/// <param name="Entries">How many entries its chain has.</param>
/// <param name="Head">Hash of the last of them.</param>
/// <param name="Sha256">SHA-256 of all lines but the last, lower-case hex.</param>
public sealed record ExportReport(long Rows, long Entries, string Head, string Sha256);

/// <summary>
/// A whole shop as one file of JSON lines that belongs to no engine: tables, columns, texts, whole numbers and bytes. Attachments are files of their own
/// beside it. Answers kept for repeated requests stay behind.
/// </summary>
public static class PortableFile
{
    private const string Importing = ".importing";

    /// <summary>Writes one, whether or not the service runs. It gets its name once it is whole.</summary>
    /// <exception cref="IOException">The file exists already, or can't be written.</exception>
    /// <exception cref="StorageUnavailableException">The database can't be read, or its chain is broken.</exception>
    public static ExportReport Export(StoreOptions options, string path, IProgress<HowFar>? progress, CancellationToken cancellation)
    {
        if (File.Exists(path))
            throw new IOException($"There is already a file {path}.");
        var partial = path + ".partial";
        try
        {
            var report = Write(options, partial, progress, cancellation);
            File.Move(partial, path);
            return report;
        }
        catch (SqliteException e)
        {
            throw SqliteFaults.Translate(e);
        }
        finally
        {
            File.Delete(partial);
        }
    }

    /// <summary>
    /// Takes one over where no database is yet. It is built beside that place and moved there once everything fits the sums of the file; after a cut it goes on
    /// where it was. A file of an older schema is brought up to date afterwards.
    /// </summary>
    /// <exception cref="IOException">There is a database already.</exception>
    /// <exception cref="InvalidDataException">The file is none, is cut off, was changed, or does not fit together.</exception>
    public static ExportReport Import(StoreOptions options, string path, IProgress<HowFar>? progress, CancellationToken cancellation)
    {
        if (File.Exists(options.Path))
            throw new IOException($"There is already a database {options.Path}. Name an empty folder.");
        using var lines = new StreamReader(path, new UTF8Encoding(false, throwOnInvalidBytes: true));
        var first = lines.ReadLine() ?? "";
        var header = PortableImport.HeaderOf(new StreamReader(new MemoryStream(Encoding.UTF8.GetBytes(first))));
        if (header.Shop != options.Shop)
            throw new InvalidDataException($"The file is of the shop {header.Shop}; this is the shop {options.Shop}.");
        var building = options with { Path = options.Path + Importing };
        var report = SqliteStore.Fill(building, header.Schema, connection => new PortableImport(connection, header).Run(lines, first, progress, cancellation));
        File.Move(building.Path, options.Path);
        return report;
    }

    private static ExportReport Write(StoreOptions options, string path, IProgress<HowFar>? progress, CancellationToken cancellation)
    {
        using var connection = SqliteFile.OpenCopy(options.Path);
        using var file = new FileStream(path, FileMode.Create);
        using var output = new BufferedStream(file, 1 << 16);
        var report = new PortableExport(connection, options.Shop, options.Time).Write(output, progress, cancellation);
        output.Flush();
        file.Flush(flushToDisk: true);
        return report;
    }
}
