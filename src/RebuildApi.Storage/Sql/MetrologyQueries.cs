using System.Collections.Immutable;
using System.Data.Common;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Dapper;
using RebuildApi.Contracts;
using RebuildApi.Storage.Sql.Personal;

namespace RebuildApi.Storage.Sql;

/// <summary>What is asked of calibrations, studies, comebacks, the policy, and of readings over all units.</summary>
internal sealed class MetrologyQueries(DbConnection connection, string shop)
{
    private const string ReadWith =
        """
        SELECT unit FROM measurement WHERE shop = @shop AND instrument = @instrument
        UNION SELECT unit FROM trial WHERE shop = @shop AND instrument = @instrument
        UNION SELECT c.unit FROM measurement m JOIN component c ON c.shop = m.shop AND c.id = m.component WHERE m.shop = @shop AND m.instrument = @instrument
        UNION SELECT p.unit FROM measurement m JOIN placement p ON p.shop = m.shop AND p.component = m.component WHERE m.shop = @shop AND m.instrument = @instrument
        ORDER BY unit
        """;

    private const string ManyMeasurements =
        """
        SELECT e.body FROM measurement m LEFT JOIN entry e ON e.shop = m.shop AND e.sequence = m.entry
        WHERE m.shop = @shop AND m.id > @after AND (@component IS NULL OR m.component = @component)
            AND NOT EXISTS (SELECT 1 FROM measurement s WHERE s.shop = m.shop AND s.supersedes = m.id) ORDER BY m.id LIMIT @limit
        """;

    private const string ManyComebacks =
        """
        SELECT e.body, x.body AS personal FROM comeback c LEFT JOIN entry e ON e.shop = c.shop AND e.sequence = c.entry
        LEFT JOIN personal x ON x.shop = e.shop AND x.sequence = e.sequence
        WHERE c.shop = @shop AND c.id > @after AND (@unit IS NULL OR c.unit = @unit)
            AND NOT EXISTS (SELECT 1 FROM comeback s WHERE s.shop = c.shop AND s.supersedes = c.id) ORDER BY c.id LIMIT @limit
        """;

    private const string NewestPolicy =
        "SELECT e.body FROM policy p LEFT JOIN entry e ON e.shop = p.shop AND e.sequence = p.entry WHERE p.shop = @shop ORDER BY p.number DESC LIMIT 1";

    private const string ManyPolicies =
        """
        SELECT e.body FROM policy p LEFT JOIN entry e ON e.shop = p.shop AND e.sequence = p.entry
        WHERE p.shop = @shop AND p.number > @after ORDER BY p.number LIMIT @limit
        """;

    public ImmutableArray<string> UnitsReadWith(string instrument) => [.. connection.Query<string>(ReadWith, new { shop, instrument })];

    public Page<Measurement> Measurements(string? component, string? after, int limit)
    {
        limit = Cursor.Limit(limit);
        var rows = connection.Query<string>(ManyMeasurements, new { shop, component, after = Cursor.After(after), limit = limit + 1 });
        return Cursor.Page(rows.Select(b => Body(b, StoreJson.Default.Measurement)), limit, m => m.Id);
    }

    public Page<Comeback> Comebacks(string? unit, string? after, int limit)
    {
        limit = Cursor.Limit(limit);
        var rows = connection.Query<ToldBody>(ManyComebacks, new { shop, unit, after = Cursor.After(after), limit = limit + 1 });
        return Cursor.Page(rows.Select(row => Body(row.Open("comeback"), StoreJson.Default.Comeback)), limit, c => c.Id);
    }

    public ImmutableArray<Calibration> Calibrations(string instrument) => OfInstrument("calibration", instrument, StoreJson.Default.Calibration);

    public ImmutableArray<GaugeStudyKept> Studies(string instrument) => OfInstrument("study", instrument, StoreJson.Default.GaugeStudyKept);

    public PolicyEdition Policy() =>
        connection.QuerySingleOrDefault<string>(NewestPolicy, new { shop }) is { } body ? Body(body, StoreJson.Default.PolicyEdition) : PolicyEdition.First;

    public Page<PolicyEdition> Policies(string? after, int limit)
    {
        limit = Cursor.Limit(limit);
        var from = Cursor.After(after) is { Length: > 0 } text ? Number(text, after!) : 0;
        var rows = connection.Query<string>(ManyPolicies, new { shop, after = from, limit = limit + 1 });
        return Cursor.Page(rows.Select(b => Body(b, StoreJson.Default.PolicyEdition)), limit, p => p.Number.ToString(CultureInfo.InvariantCulture));
    }

    private static long Number(string text, string cursor) =>
        long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : throw new UnknownCursorException(cursor);

    // The name of the table is one of the two above, never what someone sent.
    private ImmutableArray<T> OfInstrument<T>(string table, string instrument, JsonTypeInfo<T> shape) =>
    [
        .. connection.Query<string>(
                $"SELECT e.body FROM {table} r LEFT JOIN entry e ON e.shop = r.shop AND e.sequence = r.entry WHERE r.shop = @shop AND r.instrument = @instrument ORDER BY r.entry",
                new { shop, instrument })
            .Select(b => Body(b, shape)),
    ];

    private static T Body<T>(string body, JsonTypeInfo<T> shape) => JsonSerializer.Deserialize(body, shape)!;
}
