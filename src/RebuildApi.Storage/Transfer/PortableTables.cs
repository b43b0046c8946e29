using System.Collections.Immutable;
using System.Data.Common;
using Dapper;

namespace RebuildApi.Storage.Transfer;

/// <summary>The tables of a shop in an order in which each finds what it points to: the chain first, then what is an index of it.</summary>
internal static class PortableTables
{
    // What is about this database and not about the shop: its own migrations, its probe, and answers kept for repeated requests.
    private static readonly string[] Own = ["migration", "probe", "idempotency"];

    public static ImmutableArray<PortableTable> Of(DbConnection connection)
    {
        var waiting = connection.Query<string>("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
            .Except(Own)
            .Select(name => Read(connection, name))
            .ToList();
        var ordered = ImmutableArray.CreateBuilder<PortableTable>();
        while (waiting.Count > 0)
        {
            var ready = waiting.Where(t => t.PointsTo.All(to => to == t.Name || ordered.Any(o => o.Name == to))).ToArray();
            if (ready.Length == 0)
                throw new InvalidDataException($"The tables {string.Join(", ", waiting.Select(w => w.Name))} point to each other in a circle.");
            ordered.AddRange(ready);
            waiting.RemoveAll(ready.Contains);
        }

        return ordered.ToImmutable();
    }

    private static PortableTable Read(DbConnection connection, string name)
    {
        var columns = connection.Query<string>("SELECT name FROM pragma_table_info(@name) ORDER BY cid", new { name }).ToImmutableArray();
        var pointsTo = connection.Query<string>("SELECT DISTINCT \"table\" FROM pragma_foreign_key_list(@name)", new { name }).ToImmutableArray();
        return new PortableTable(name, columns, pointsTo);
    }
}

/// <summary>One table.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="PointsTo">The tables that its foreign keys name.</param>
internal sealed record PortableTable(string Name, ImmutableArray<string> Columns, ImmutableArray<string> PointsTo)
{
    private string Names => string.Join(", ", Columns);

    /// <summary>Its rows in the order in which they were added, so that a correction comes after what it corrects.</summary>
    public string Select => $"SELECT {Names} FROM {Name} WHERE shop = @shop ORDER BY rowid";

    public string Count => $"SELECT COUNT(*) FROM {Name} WHERE shop = @shop";

    /// <summary>A row that is there already is left alone, so that a take-over that was cut off can go on.</summary>
    public string Insert => $"INSERT INTO {Name} ({Names}) VALUES ({string.Join(", ", Columns.Select(c => "@" + c))}) ON CONFLICT DO NOTHING";
}
