using System.Text;
using RebuildApi.Storage.Postgres;
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
        finally
        {
            File.Delete(partial);
        }
    }

    /// <summary>
    /// Takes one over where nothing of the shop is yet. It counts once everything fits the sums of the file; after a cut it goes on where it was. In a file of the
    /// engine in the process, an older schema is brought up to date afterwards. Of a file that does not fit nothing is kept.
    /// </summary>
    /// <exception cref="IOException">There are records already.</exception>
    /// <exception cref="InvalidDataException">The file is none, is cut off, was changed, or does not fit together.</exception>
    public static ExportReport Import(StoreOptions options, string path, IProgress<HowFar>? progress, CancellationToken cancellation)
    {
        using var lines = new StreamReader(path, new UTF8Encoding(false, throwOnInvalidBytes: true));
        var first = lines.ReadLine() ?? "";
        var header = PortableImport.HeaderOf(new StreamReader(new MemoryStream(Encoding.UTF8.GetBytes(first))));
        if (header.Shop != options.Shop)
            throw new InvalidDataException($"The file is of the shop {header.Shop}; this is the shop {options.Shop}.");
        return options.Database is null
            ? SqliteTransfer.Import(options, header, first, Take)
            : PostgresTransfer.Import(options, header, first, Take);

        ExportReport Take(PortableImport import) => import.Run(lines, first, progress, cancellation);
    }

    private static ExportReport Write(StoreOptions options, string path, IProgress<HowFar>? progress, CancellationToken cancellation)
    {
        using var file = new FileStream(path, FileMode.Create);
        using var output = new BufferedStream(file, 1 << 16);
        var report = options.Database is null ? SqliteTransfer.Export(options, Say) : PostgresTransfer.Export(options, Say);
        output.Flush();
        file.Flush(flushToDisk: true);
        return report;

        ExportReport Say(PortableExport export) => export.Write(output, progress, cancellation);
    }
}
