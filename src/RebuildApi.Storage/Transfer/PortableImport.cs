using System.Data.Common;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Dapper;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Transfer;

/// <summary>
/// Takes a portable file into a database that holds nothing else of its shop, in groups of rows. One that was cut off goes on when it is started again: a row that is
/// there already is left alone, and at the end everything is held against the sums of the file.
/// </summary>
internal sealed class PortableImport(DbConnection connection, ICatalogue catalogue, PortableHeader header, Func<IEnumerable<string>> check)
{
    private const int Group = 2000;
    private readonly Dictionary<string, PortableTable> _tables = PortableTables.Of(catalogue).ToDictionary(t => t.Name, StringComparer.Ordinal);

    /// <summary>Reads the first line of a file.</summary>
    /// <exception cref="InvalidDataException">It is no portable file.</exception>
    public static PortableHeader HeaderOf(StreamReader lines)
    {
        var header = Read(lines.ReadLine() ?? "", 1, PortableJson.Default.PortableHeader);
        return header.Format == PortableHeader.TheFormat
            ? header
            : throw new InvalidDataException($"The file is of the format {header.Format}; {PortableHeader.TheFormat} is taken.");
    }

    /// <summary>Takes over what follows the header.</summary>
    /// <exception cref="InvalidDataException">The file is cut off or was changed, or what it holds does not fit together; the database must not be used.</exception>
    public ExportReport Run(StreamReader lines, string first, IProgress<HowFar>? progress, CancellationToken cancellation)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Append(hash, first);
        var (done, all) = (0L, header.Rows.Values.Sum());
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            using var transaction = connection.BeginTransaction();
            for (var i = 0; i < Group; i++)
            {
                var line = lines.ReadLine() is { } whole && !IsCut(whole, lines) ? whole : throw CutOff();
                if (line.StartsWith("{\"end\":", StringComparison.Ordinal))
                {
                    transaction.Commit();
                    return Finish(Read(line, done + 2, PortableJson.Default.PortableEnd), done, Convert.ToHexStringLower(hash.GetCurrentHash()), cancellation);
                }

                Append(hash, line);
                Take(Read(line, done + 2, PortableJson.Default.PortableRow), transaction);
                done++;
            }

            transaction.Commit();
            progress?.Report(new HowFar(done, all));
        }
    }

    // Each line is one object; the last one of a file that was cut off ends anywhere.
    private static bool IsCut(string line, StreamReader lines) => lines.EndOfStream && !line.EndsWith('}');

    private static InvalidDataException CutOff() =>
        new("The file is cut off: its last line is missing. What was taken over waits beside the shop and does not count; import the whole file, and it goes on from there.", new EndOfStreamException());

    private void Take(PortableRow row, DbTransaction transaction)
    {
        if (!_tables.TryGetValue(row.Table, out var table))
            throw new InvalidDataException($"The file has a table {row.Table}, which this program does not know.");
        var values = new DynamicParameters();
        foreach (var column in table.Columns)
            values.Add(column, row.Row.TryGetValue(column, out var value) ? Value(value) : throw new InvalidDataException($"A row of {row.Table} has no {column}."));
        connection.Execute(table.Insert, values, transaction);
    }

    private ExportReport Finish(PortableEnd end, long rows, string sha256, CancellationToken cancellation)
    {
        if (end.Sha256 != sha256 || end.Rows != rows)
            throw new InvalidDataException("The file was changed after it was written: its sums do not fit.");
        foreach (var (name, count) in header.Rows)
        {
            if (connection.ExecuteScalar<long>(_tables[name].Count, new { shop = header.Shop }) is var stands && stands != count)
                throw new InvalidDataException(FormattableString.Invariant($"The table {name} has {stands} rows where the file has {count}."));
        }

        var chain = new ChainWalk(connection, header.Shop).Verify(ChainQuestion.Plain, cancellation);
        if (!chain.Intact)
            throw new InvalidDataException(FormattableString.Invariant($"Entry {chain.FirstBroken} of the chain: {chain.Why}."));
        if (chain.Head != end.Head)
            throw new InvalidDataException("The chain does not end where the file says.");
        if (check().FirstOrDefault() is { } wrong)
            throw new InvalidDataException(wrong);
        return new ExportReport(rows, chain.Entries, chain.Head, sha256);
    }

    private static object? Value(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Null => null,
        JsonValueKind.Number => value.GetInt64(),
        JsonValueKind.String => value.GetString(),
        JsonValueKind.Object when value.TryGetProperty("base64", out var bytes) => bytes.GetBytesFromBase64(),
        _ => throw new InvalidDataException($"A value is {value.ValueKind}; text, a whole number, null or bytes are taken."),
    };

    private static T Read<T>(string line, long number, System.Text.Json.Serialization.Metadata.JsonTypeInfo<T> shape)
    {
        try
        {
            return JsonSerializer.Deserialize(line, shape) ?? throw new JsonException("null");
        }
        catch (JsonException e)
        {
            throw new InvalidDataException(FormattableString.Invariant($"Line {number} can't be read: {e.Message}"), e);
        }
    }

    private static void Append(IncrementalHash hash, string line) => hash.AppendData(Encoding.UTF8.GetBytes(line + "\n"));
}
