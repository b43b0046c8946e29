using System.Collections.Immutable;
using System.Data.Common;
using System.Text.Json;
using Dapper;
using RebuildApi.Storage.Sql.Personal;

namespace RebuildApi.Storage.Sql;

/// <summary>What is asked of all units together because of whose they are.</summary>
internal sealed class CustomerQueries(DbConnection connection, string shop)
{
    private const string Bodies = $"SELECT e.body, {PersonalSql.Column} FROM entry e {PersonalSql.Join} WHERE e.shop = @shop AND e.kind = 'unit' ORDER BY e.sequence";

    private const string Newest =
        """
        SELECT e.unit, e.at FROM entry e
        JOIN (SELECT unit, MAX(sequence) AS sequence FROM entry WHERE shop = @shop AND unit <> '' GROUP BY unit) n ON e.sequence = n.sequence
        WHERE e.shop = @shop
        """;

    /// <summary>The units that name a customer, or once did, in the order in which they were taken in.</summary>
    public ImmutableArray<string> UnitsOf(string customer) =>
        [.. Units().Where(u => u.Customer == customer).Select(u => u.Id).Distinct(StringComparer.Ordinal)];

    /// <summary>Every customer that a unit names, or once did.</summary>
    public ImmutableArray<CustomerSeen> All()
    {
        var touched = connection.Query<(string Unit, string At)>(Newest, new { shop }).ToDictionary(t => t.Unit, t => Stamp.Read(t.At), StringComparer.Ordinal);
        return [.. Units()
            .Where(u => u.Customer is not (null or Erasure.Text))
            .GroupBy(u => u.Customer!, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new CustomerSeen(g.Key, g.Select(u => u.Id).Distinct(StringComparer.Ordinal).Count(), g.Min(u => u.Opened), g.Max(u => touched[u.Id])))];
    }

    // Each edition of each unit: a name that was changed later is on record all the same.
    private IEnumerable<Unit> Units() =>
        connection.Query<ToldBody>(Bodies, new { shop }, buffered: false).Select(row => JsonSerializer.Deserialize(row.Open("unit"), StoreJson.Default.Unit)!);
}
