using System.Globalization;
using System.Security.Cryptography;

namespace RebuildApi.Storage.Sql;

/// <summary>Rows of kept judgements and of the large texts that they rest on.</summary>
internal sealed class JudgementRows(Statements statements, string shop)
{
    /// <summary>An id that sorts as the entries do.</summary>
    public static string Id(long sequence) => "j" + sequence.ToString("D12", CultureInfo.InvariantCulture);

    /// <summary>Keeps a text once.</summary>
    /// <returns>Its SHA-256 in lower-case hex.</returns>
    public string Content(ReadOnlyMemory<byte> bytes)
    {
        var sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes.Span));
        statements.Run(
            "INSERT INTO content (shop, sha256, body) VALUES (@shop, @sha256, @body) ON CONFLICT (shop, sha256) DO NOTHING",
            ("shop", shop), ("sha256", sha256), ("body", bytes.ToArray()));
        return sha256;
    }

    public void Insert(JudgementKept kept, long entry) => statements.Run(
        """
        INSERT INTO judgement (shop, id, unit, purpose, snapshot, judgement, entry)
        VALUES (@shop, @id, @unit, @purpose, @snapshot, @judgement, @entry)
        """,
        ("shop", shop), ("id", kept.Id), ("unit", kept.Unit), ("purpose", kept.Purpose), ("snapshot", kept.SnapshotSha256),
        ("judgement", kept.BodySha256), ("entry", entry));
}
