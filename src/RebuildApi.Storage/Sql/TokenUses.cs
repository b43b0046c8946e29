using System.Collections.Immutable;
using System.Data.Common;
using Dapper;

namespace RebuildApi.Storage.Sql;

/// <summary>When each token was last used. Not part of the chain: nobody relies on it.</summary>
internal static class TokenUses
{
    private const string Newest =
        """
        INSERT INTO token_use (shop, token, used) SELECT shop, id, @used FROM token WHERE shop = @shop AND id = @token
        ON CONFLICT (shop, token) DO UPDATE SET used = CASE WHEN token_use.used < excluded.used THEN excluded.used ELSE token_use.used END
        """;

    public static ImmutableSortedDictionary<string, DateTimeOffset> Read(DbConnection connection, string shop) => connection
        .Query<(string Token, string Used)>("SELECT token, used FROM token_use WHERE shop = @shop", new { shop })
        .ToImmutableSortedDictionary(r => r.Token, r => Stamp.Read(r.Used), StringComparer.Ordinal);

    public static void Write(Statements statements, string shop, IEnumerable<KeyValuePair<string, DateTimeOffset>> uses)
    {
        foreach (var (token, used) in uses)
            statements.Run(Newest, ("shop", shop), ("token", token), ("used", Stamp.Of(used)));
    }
}
