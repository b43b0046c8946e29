using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace RebuildApi.PluginHost.Catalog;

/// <summary>
/// How what lies in the folders looks from outside: names, lengths and times, nothing read. Two looks that differ say that something changed; the bytes are
/// read and hashed only when it is taken up. A folder of very many files costs no more than one at the limit.
/// </summary>
internal sealed class DropLook(PluginCatalog catalog, int mostFiles)
{
    /// <summary>Each plug-in and family file by id, with how it looks.</summary>
    public ImmutableDictionary<string, string> Now()
    {
        var looks = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var path in catalog.Dropped())
            looks[Path.GetFileName(path)] = Of(path);
        return looks.ToImmutable();
    }

    private string Of(string path)
    {
        try
        {
            return Directory.Exists(path)
                ? string.Join('\n', new DirectoryInfo(path).EnumerateFileSystemInfos().Take(mostFiles + 1).Select(Line).Order(StringComparer.Ordinal))
                : Line(new FileInfo(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Gone while it was looked at, or not ours to look at: that too is how it looks.
            return e.GetType().Name;
        }
    }

    private static string Line(FileSystemInfo entry) => string.Create(
        CultureInfo.InvariantCulture,
        $"{entry.Name} {(entry as FileInfo)?.Length} {entry.LastWriteTimeUtc.Ticks} {entry.CreationTimeUtc.Ticks}");
}
