using System.Collections.Immutable;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Transfer;

/// <summary>The tables of a shop in an order in which each finds what it points to: the chain first, then what is an index of it.</summary>
internal static class PortableTables
{
    // What is about this database and not about the shop: its own migrations, its probe, answers kept for repeated requests, and who is slowed.
    private static readonly string[] Own = ["migration", "importing", "probe", "idempotency", "tries"];

    public static ImmutableArray<PortableTable> Of(ICatalogue catalogue)
    {
        var waiting = catalogue.Tables().Except(Own).Select(name => Read(catalogue, name)).ToList();
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

    private static PortableTable Read(ICatalogue catalogue, string name) =>
        new(name, catalogue.Columns(name), catalogue.Key(name), catalogue.PointsTo(name));
}

/// <summary>One table.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Key">The columns of its key.</param>
/// <param name="PointsTo">The tables that its foreign keys name.</param>
internal sealed record PortableTable(string Name, ImmutableArray<string> Columns, ImmutableArray<string> Key, ImmutableArray<string> PointsTo)
{
    // The place in the chain of what a row says.
    private const string Entry = "entry";

    private string Names => string.Join(", ", Columns);

    /// <summary>Its rows in the order in which they were added, so that a correction comes after what it corrects.</summary>
    public string Select => $"SELECT {Names} FROM {Name} WHERE shop = @shop ORDER BY {string.Join(", ", Columns.Contains(Entry) ? Key.Prepend(Entry) : Key)}";

    public string Count => $"SELECT COUNT(*) FROM {Name} WHERE shop = @shop";

    /// <summary>A row that is there already is left alone, so that a take-over that was cut off can go on.</summary>
    public string Insert => $"INSERT INTO {Name} ({Names}) VALUES ({string.Join(", ", Columns.Select(c => "@" + c))}) ON CONFLICT DO NOTHING";
}
