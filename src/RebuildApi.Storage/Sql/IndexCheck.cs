using System.Data.Common;
using System.Security.Cryptography;
using Dapper;

namespace RebuildApi.Storage.Sql;

/// <summary>Whether the tables say what the chain says: a reading that was hidden or moved by editing a table shows here.</summary>
internal sealed class IndexCheck(DbConnection connection, string shop)
{
    private const string Contents =
        """
        SELECT j.entry AS sequence, c.sha256 AS sha256, c.body AS body FROM judgement j
        JOIN content c ON c.shop = j.shop AND (c.sha256 = j.snapshot OR c.sha256 = j.judgement)
        WHERE j.shop = @shop ORDER BY j.entry
        """;

    /// <summary>The first entry that a table contradicts and why, or null.</summary>
    public (long Sequence, string Why)? FirstFault(CancellationToken cancellation) =>
        IndexedTable.All.Select(table => InTable(table, cancellation)).Append(InContents()).Where(fault => fault is not null).Min();

    private (long Sequence, string Why)? InTable(IndexedTable table, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        var stray = connection.ExecuteScalar<long?>(table.StrayRowSql, new { shop });
        var changed = connection.Query<IndexedEntry>(table.EntriesSql, new { shop }, buffered: false)
            .FirstOrDefault(entry => entry.Says != table.Expected(entry));
        if (stray is null && changed is null)
            return null;
        return (Math.Min(stray ?? long.MaxValue, changed?.Sequence ?? long.MaxValue), $"the table {table.Name} says otherwise");
    }

    private (long Sequence, string Why)? InContents()
    {
        var changed = connection.Query<Content>(Contents, new { shop }, buffered: false)
            .FirstOrDefault(content => Convert.ToHexStringLower(SHA256.HashData(content.Body)) != content.Sha256);
        return changed is null ? null : (changed.Sequence, "the judgement that it keeps was changed");
    }

    private sealed record Content(long Sequence, string Sha256, byte[] Body);
}
