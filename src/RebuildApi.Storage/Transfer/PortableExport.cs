using System.Collections.Immutable;
using System.Data.Common;
using System.Security.Cryptography;
using System.Text.Json;
using Dapper;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Transfer;

/// <summary>Writes a whole shop as one portable file: one JSON object on each line, a header first, then the rows table by table, then the sums. The connection stands at one moment.</summary>
internal sealed class PortableExport(DbConnection connection, ICatalogue catalogue, int schema, string shop, TimeProvider time)
{
    private const int Step = 500;

    public ExportReport Write(Stream output, IProgress<HowFar>? progress, CancellationToken cancellation)
    {
        var chain = new ChainWalk(connection, shop).Verify(ChainQuestion.Plain, cancellation);
        if (!chain.Intact)
            throw new StorageUnavailableException("damaged", FormattableString.Invariant($"Entry {chain.FirstBroken} of the chain: {chain.Why}. Restore the last verified backup before anything is taken over."));
        var tables = PortableTables.Of(catalogue);
        var counts = tables.ToImmutableSortedDictionary(t => t.Name, t => connection.ExecuteScalar<long>(t.Count, new { shop }), StringComparer.Ordinal);
        using var lines = new HashedLines(output);
        lines.Write(new PortableHeader(PortableHeader.TheFormat, shop, schema, time.GetUtcNow(), counts), PortableJson.Default.PortableHeader);
        var (done, all) = (0L, counts.Values.Sum());
        foreach (var row in tables.SelectMany(Rows))
        {
            cancellation.ThrowIfCancellationRequested();
            lines.Write(row, PortableJson.Default.PortableRow);
            if (++done % Step == 0 || done == all)
                progress?.Report(new HowFar(done, all));
        }

        var sha256 = lines.Sha256();
        lines.Write(new PortableEnd(true, done, chain.Entries, chain.Head, sha256), PortableJson.Default.PortableEnd);
        return new ExportReport(done, chain.Entries, chain.Head, sha256);
    }

    private IEnumerable<PortableRow> Rows(PortableTable table)
    {
        using var reader = connection.ExecuteReader(table.Select, new { shop });
        while (reader.Read())
        {
            var row = ImmutableSortedDictionary.CreateBuilder<string, JsonElement>(StringComparer.Ordinal);
            for (var i = 0; i < table.Columns.Length; i++)
                row[table.Columns[i]] = Value(reader.GetValue(i));
            yield return new PortableRow(table.Name, row.ToImmutable());
        }
    }

    private static JsonElement Value(object value) => value switch
    {
        DBNull => JsonElement.Parse("null"),
        long number => JsonSerializer.SerializeToElement(number),
        byte[] bytes => JsonSerializer.SerializeToElement(ImmutableSortedDictionary<string, string>.Empty.Add("base64", Convert.ToBase64String(bytes)), PortableJson.Default.ImmutableSortedDictionaryStringString),
        string text => JsonSerializer.SerializeToElement(text),
        _ => throw new InvalidDataException($"A column holds {value.GetType().Name}, which a portable file can't say."),
    };
}

/// <summary>Lines that are hashed as they are written.</summary>
internal sealed class HashedLines(Stream output) : IDisposable
{
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

    public void Write<T>(T line, System.Text.Json.Serialization.Metadata.JsonTypeInfo<T> shape)
    {
        byte[] bytes = [.. JsonSerializer.SerializeToUtf8Bytes(line, shape), (byte)'\n'];
        _hash.AppendData(bytes);
        output.Write(bytes);
    }

    public string Sha256() => Convert.ToHexStringLower(_hash.GetCurrentHash());

    public void Dispose() => _hash.Dispose();
}
