using System.Collections.Immutable;
using System.Globalization;

namespace RebuildApi.Storage.Sqlite;

/// <summary>One numbered step of the schema.</summary>
/// <param name="Number">1, 2, 3 …</param>
/// <param name="Name">Its file name without the ending.</param>
/// <param name="Sql">What it does.</param>
internal sealed record Migration(int Number, string Name, string Sql)
{
    private const string Folder = "RebuildApi.Storage.Migrations.Sqlite.";

    /// <summary>The steps that this program brings, in order.</summary>
    public static ImmutableArray<Migration> Shipped() =>
        [.. typeof(Migration).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Folder, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(Read)];

    private static Migration Read(string resource)
    {
        using var stream = typeof(Migration).Assembly.GetManifestResourceStream(resource)!;
        using var reader = new StreamReader(stream);
        var name = Path.GetFileNameWithoutExtension(resource[Folder.Length..]);
        return new Migration(int.Parse(name[..4], NumberStyles.None, CultureInfo.InvariantCulture), name, reader.ReadToEnd());
    }
}
