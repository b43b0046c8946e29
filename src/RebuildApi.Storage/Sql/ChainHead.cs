using System.Data.Common;
using Dapper;

namespace RebuildApi.Storage.Sql;

/// <summary>The end of the chain: what the next entry follows.</summary>
internal sealed record ChainHead(long Sequence, string Hash)
{
    public static readonly ChainHead Empty = new(0, "");

    public static ChainHead Read(DbConnection connection, string shop) => connection.QuerySingleOrDefault<ChainHead>(
        "SELECT sequence, hash FROM entry WHERE shop = @shop ORDER BY sequence DESC LIMIT 1", new { shop }) ?? Empty;
}
