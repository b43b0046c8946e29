using Dapper;
using Npgsql;

namespace RebuildApi.Storage.Postgres;

/// <summary>
/// What of another shop may be seen beside the own rows: only while a reading says whose rows it wants, only what that shop has opened to the one that the
/// connection named, and only to read, for these policies are of SELECT alone. They are raised with the fence.
/// </summary>
internal static class PostgresOpening
{
    private const string Own = "current_setting('rebuild.shop', true)";

    private const string Wanted = "shop = current_setting('rebuild.reading', true)";

    private const string Stock = Wanted + " AND " + OpenedStock;

    private const string Units = Wanted + " AND " + OpenedUnits;

    private const string OpenedStock = "EXISTS (SELECT 1 FROM sharing s WHERE s.shop = current_setting('rebuild.reading', true) AND s.id = " + Own
        + " AND 'stock' = ANY (string_to_array(s.about, ' ')))";

    private const string OpenedUnits = "EXISTS (SELECT 1 FROM sharing s WHERE s.shop = current_setting('rebuild.reading', true) AND s.id = " + Own
        + " AND 'units' = ANY (string_to_array(s.about, ' ')))";

    // Of the chain only entries of these kinds; where a customer's texts could stand in the body, only those that have them apart.
    private const string Entries = Wanted
        + " AND ((kind IN ('stock', 'reservation') AND " + OpenedStock + ") OR (kind IN ('unit', 'judgement') AND form >= 2 AND " + OpenedUnits + "))";

    // Judgements, and not the snapshots beside them: whichever row of judgement and entry can be seen decides.
    private const string Judgements = Wanted
        + " AND EXISTS (SELECT 1 FROM judgement j JOIN entry e ON e.shop = j.shop AND e.sequence = j.entry WHERE j.shop = content.shop AND j.judgement = content.sha256)";

    private static readonly (string Table, string Shows)[] Policies =
    [
        ("sharing", "id = " + Own),
        ("stock", Stock),
        ("reservation", Stock),
        ("unit", Units),
        ("judgement", Units),
        ("entry", Entries),
        ("content", Judgements),
    ];

    /// <summary>Puts the policies in place, over the tables that the fence stands around.</summary>
    public static void Raise(NpgsqlConnection connection, IReadOnlyCollection<string> fenced)
    {
        // An earlier edition's schema has nothing to be opened by.
        if (!fenced.Contains("sharing"))
            return;
        foreach (var (table, shows) in Policies)
            connection.Execute($"DROP POLICY IF EXISTS opened ON {table}; CREATE POLICY opened ON {table} FOR SELECT USING ({shows})");
    }

    /// <summary>Says whose rows the rest of this transaction wants to see.</summary>
    public static void Want(NpgsqlConnection connection, string shop) => connection.Execute("SELECT set_config('rebuild.reading', @shop, true)", new { shop });
}
