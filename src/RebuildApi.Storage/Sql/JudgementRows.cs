using System.Data.Common;
using System.Globalization;
using System.Security.Cryptography;
using Dapper;

namespace RebuildApi.Storage.Sql;

/// <summary>Rows of kept judgements and of the large texts that they rest on.</summary>
internal sealed class JudgementRows(DbConnection connection, string shop)
{
    /// <summary>An id that sorts as the entries do.</summary>
    public static string Id(long sequence) => "j" + sequence.ToString("D12", CultureInfo.InvariantCulture);

    /// <summary>Keeps a text once.</summary>
    /// <returns>Its SHA-256 in lower-case hex.</returns>
    public string Content(ReadOnlyMemory<byte> bytes)
    {
        var sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes.Span));
        connection.Execute(
            "INSERT INTO content (shop, sha256, body) VALUES (@shop, @sha256, @body) ON CONFLICT (shop, sha256) DO NOTHING",
            new { shop, sha256, body = bytes.ToArray() });
        return sha256;
    }

    public void Insert(JudgementKept kept, long entry) => connection.Execute(
        """
        INSERT INTO judgement (shop, id, unit, purpose, snapshot, judgement, entry)
        VALUES (@shop, @Id, @Unit, @Purpose, @SnapshotSha256, @BodySha256, @entry)
        """,
        new { shop, kept.Id, kept.Unit, kept.Purpose, kept.SnapshotSha256, kept.BodySha256, entry });
}
