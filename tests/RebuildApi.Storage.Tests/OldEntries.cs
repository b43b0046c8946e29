using System.Data.Common;
using System.Text.Json;
using Dapper;
using RebuildApi.Storage.Sql;
using RebuildApi.Storage.Sql.Personal;

namespace RebuildApi.Storage.Tests;

/// <summary>Writes a chain anew as earlier editions did: texts that name a customer in the body, and no form in the hash.</summary>
internal static class OldEntries
{
    /// <summary>Takes the first unit of a shop in, as an edition before the stages did.</summary>
    public static void Open(TempStore temp, Unit unit)
    {
        var body = JsonSerializer.Serialize(unit, StoreJson.Default.Unit);
        var link = new ChainLink("main", 1, Stamp.Of(unit.Opened), "bench-1", "POST /v1/units", "unit", unit.Id, unit.Id, body, "", "").Sealed();
        using var connection = temp.Open();
        connection.Execute(
            """
            INSERT INTO entry (shop, sequence, at, actor, operation, kind, unit, id, body, previous, hash)
            VALUES (@Shop, @Sequence, @At, @Actor, @Operation, @Kind, @Unit, @Id, @Body, @Previous, @Hash);
            """, link);
        connection.Execute("INSERT INTO unit (shop, id, stage, version, entry) VALUES ('main', @Id, @Stage, 1, 1)", unit);
    }

    public static void Make(TempStore temp)
    {
        using var connection = temp.Open();
        var guard = Unguard(connection, isFile: temp.Options.Database is null);
        var previous = "";
        foreach (var (sequence, at, actor, operation, kind, unit, id, body) in connection.Query<(long, string, string, string, string, string, string, string)>(
            "SELECT sequence, at, actor, operation, kind, unit, id, body FROM entry ORDER BY sequence").ToArray())
        {
            var personal = connection.ExecuteScalar<string?>("SELECT body FROM personal WHERE sequence = @sequence", new { sequence });
            var link = new ChainLink("main", sequence, at, actor, operation, kind, unit, id, PersonalBody.Open(kind, body, personal), previous, "").Sealed();
            connection.Execute("UPDATE entry SET body = @Body, previous = @Previous, hash = @Hash, form = 1 WHERE sequence = @Sequence", link);
            previous = link.Hash;
        }

        connection.Execute("DELETE FROM personal; " + guard);
    }

    /// <returns>What guards the entries again.</returns>
    private static string Unguard(DbConnection connection, bool isFile)
    {
        if (!isFile)
        {
            connection.Execute("SET session_replication_role = replica");
            return "SET session_replication_role = origin";
        }

        connection.Execute("PRAGMA secure_delete = ON; DROP TRIGGER personal_is_not_removed");
        var guard = connection.ExecuteScalar<string>("SELECT sql FROM sqlite_master WHERE name = 'entry_is_not_changed'")!;
        connection.Execute("DROP TRIGGER entry_is_not_changed");
        return guard;
    }
}
