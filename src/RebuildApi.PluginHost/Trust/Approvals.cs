using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace RebuildApi.PluginHost.Trust;

/// <summary>
/// What may run. Each list is plain text, one line each, <c>#</c> beginning a comment: <c>hash  id</c> approves a plug-in by the hash of all its
/// assemblies; lines <c>hash  id/file.dll</c>, as <c>sha256sum</c> prints them, together approve a plug-in of exactly those files.
/// </summary>
internal sealed class Approvals(PluginHostOptions options)
{
    /// <summary>Whether exactly these bytes are approved. The lists are read anew, so that an approval taken back counts at the next load.</summary>
    public bool Cover(string id, string sha256) =>
        options.ApprovedLists.Add(options.ApprovalsFile).Any(list => Read(list).Contains((id, sha256)));

    /// <summary>Whether exactly these bytes are on a list that was shipped: whoever made that list ran their worked cases.</summary>
    public bool CoverAsShipped(string id, string sha256) => options.ApprovedLists.Any(list => Read(list).Contains((id, sha256)));

    /// <summary>Writes one approval, and returns when it is on disk.</summary>
    public void Add(string id, string sha256, string who)
    {
        var when = options.Time.GetUtcNow().ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
        var line = $"{sha256}  {id}  # approved by {PluginFault.Tame(who)} at {when}\n";
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(options.ApprovalsFile))!);
        using var stream = new FileStream(options.ApprovalsFile, FileMode.Append, FileAccess.Write, FileShare.Read);
        stream.Write(Encoding.UTF8.GetBytes(line));
        stream.Flush(flushToDisk: true);
    }

    private static ImmutableHashSet<(string Id, string Sha256)> Read(string list)
    {
        if (!File.Exists(list))
            return [];
        var lines = File.ReadLines(list).Select(Parse).OfType<(string Name, string Sha256)>().ToList();
        var whole = lines.Where(l => !l.Name.Contains('/', StringComparison.Ordinal));
        var byFile = lines
            .Where(l => l.Name.Contains('/', StringComparison.Ordinal))
            .Select(l => (Path: l.Name.Split('/', 2), l.Sha256))
            .GroupBy(l => l.Path[0], l => (Name: l.Path[1], l.Sha256), StringComparer.Ordinal)
            .Select(g => (Id: g.Key, Sha256: PluginFiles.HashOf(g)));
        return [.. whole, .. byFile];
    }

    private static (string Name, string Sha256)? Parse(string line)
    {
        var words = line.Split('#', 2)[0].Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return words.Length == 2 && words[0].Length == 64 ? (words[1], words[0].ToLowerInvariant()) : null;
    }
}
