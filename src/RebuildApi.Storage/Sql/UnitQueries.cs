using System.Collections.Immutable;
using System.Data.Common;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Dapper;
using RebuildApi.Contracts;
using RebuildApi.Storage.Sql.Personal;

namespace RebuildApi.Storage.Sql;

/// <summary>What is asked of a unit and what is in it, over one connection, in whatever transaction it is in.</summary>
internal sealed class UnitQueries(DbConnection connection, string shop)
{
    private const string Every = $"SELECT u.version, e.body, {PersonalSql.Column} FROM unit u LEFT JOIN entry e ON e.shop = u.shop AND e.sequence = u.entry {PersonalSql.Join}";

    private const string OneUnit =
        Every + "WHERE u.shop = @shop AND u.id = @id";

    private const string ManyUnits =
        Every + "WHERE u.shop = @shop AND u.id > @after AND (@stage IS NULL OR u.stage = @stage) ORDER BY u.id LIMIT @limit";

    private const string OneComponent =
        """
        SELECT e.body FROM component c LEFT JOIN entry e ON e.shop = c.shop AND e.sequence = c.entry
        WHERE c.shop = @shop AND c.id = @id ORDER BY c.revision DESC LIMIT 1
        """;

    public Unit? Unit(string id)
    {
        var row = connection.QuerySingleOrDefault<ToldBody>(OneUnit, new { shop, id });
        return row is null ? null : Read(row);
    }

    public Page<Unit> Units(string? after, int limit, string? stage)
    {
        limit = Cursor.Limit(limit);
        var rows = connection.Query<ToldBody>(ManyUnits, new { shop, after = Cursor.After(after), stage, limit = limit + 1 });
        return Cursor.Page(rows.Select(Read), limit, u => u.Id);
    }

    public Component? Component(string id)
    {
        var body = connection.QuerySingleOrDefault<string>(OneComponent, new { shop, id });
        return body is null ? null : Body(body, StoreJson.Default.Component);
    }

    public UnitFile? File(string id)
    {
        if (Unit(id) is not { } unit)
            return null;
        var measurements = All(FileSql.Measurements, id, StoreJson.Default.Measurement);
        var trials = All(FileSql.Trials, id, StoreJson.Default.TrialAssembly);
        var findings = All(FileSql.Findings, id, StoreJson.Default.Finding);
        return new UnitFile(
            unit,
            All(FileSql.Components, id, StoreJson.Default.Component),
            All(FileSql.Placements, id, StoreJson.Default.Placement),
            measurements,
            trials,
            findings,
            [.. connection.Query<ToldBody>(FileSql.Decisions, new { shop, id }).Select(row => Body(row.Open("decision"), StoreJson.Default.Decision))],
            Instruments([.. measurements.Select(m => m.Taken), .. trials.Select(t => t.Taken), .. findings.Select(f => f.Taken)]))
        {
            Policy = new MetrologyQueries(connection, shop).Policy(),
        };
    }

    private ImmutableArray<T> All<T>(string sql, string id, JsonTypeInfo<T> shape) =>
        [.. connection.Query<string>(sql, new { shop, id }).Select(body => Body(body, shape))];

    private ImmutableArray<Instrument> Instruments(IEnumerable<Taken> taken)
    {
        var named = taken.Select(t => t.Instrument).OfType<string>().Distinct().Order(StringComparer.Ordinal);
        var instruments = new InstrumentQueries(connection, shop);
        return [.. named.Select(instruments.Instrument).OfType<Instrument>()];
    }

    private static Unit Read(ToldBody row)
    {
        var unit = Body(row.Open("unit"), StoreJson.Default.Unit);
        return unit with { Version = row.Version, Stage = UnitStages.Today(unit.Stage) };
    }

    private static T Body<T>(string body, JsonTypeInfo<T> shape) => JsonSerializer.Deserialize(body, shape)!;
}

/// <summary>A body that was written once, and the row version that stands now.</summary>
internal sealed record VersionedBody(long Version, string Body);
