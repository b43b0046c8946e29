using System.Collections.Immutable;
using System.Globalization;

namespace RebuildApi.Storage.Sql;

/// <summary>One numbered step of the schema.</summary>
/// <param name="Number">1, 2, 3 …</param>
/// <param name="Name">Its file name without the ending.</param>
/// <param name="Sql">What it does.</param>
internal sealed record Migration(int Number, string Name, string Sql)
{
    /// <summary>The engine in the process.</summary>
    public const string Sqlite = "Sqlite";

    /// <summary>The engine for several copies of the service.</summary>
    public const string Postgres = "Postgres";

    private const string Folder = "RebuildApi.Storage.Migrations.";

    /// <summary>The steps that this program brings for an engine, in order. Both engines have the same steps by number and name.</summary>
    public static ImmutableArray<Migration> Shipped(string engine) =>
        [.. typeof(Migration).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Folder + engine + ".", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(resource => Read(resource, (Folder + engine + ".").Length))];

    private static Migration Read(string resource, int prefix)
    {
        using var stream = typeof(Migration).Assembly.GetManifestResourceStream(resource)!;
        using var reader = new StreamReader(stream);
        var name = Path.GetFileNameWithoutExtension(resource[prefix..]);
        return new Migration(int.Parse(name[..4], NumberStyles.None, CultureInfo.InvariantCulture), name, reader.ReadToEnd());
    }
}
