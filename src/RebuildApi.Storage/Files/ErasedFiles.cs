namespace RebuildApi.Storage;

/// <summary>Removes the files that erasures name. It may be done again at any time: after a power cut, or when a backup brought them back.</summary>
public static class ErasedFiles
{
    /// <summary>Removes those that are still there and that nothing recorded since shows.</summary>
    public static async Task Sweep(IStore store, AttachmentFolder folder, CancellationToken cancellation)
    {
        var erasures = await store.All<Erasure>(ShopFilter.Every, cancellation);
        var named = erasures.SelectMany(e => e.Files).ToHashSet(StringComparer.Ordinal);
        if (named.Count == 0)
            return;
        var shown = (await store.All<Attachment>(ShopFilter.Every, cancellation))
            .Where(a => !erasures.Any(e => e.Unit == a.Unit && e.Time >= a.Time && e.Files.Contains(a.Sha256)))
            .Select(a => a.Sha256);
        foreach (var file in named.Except(shown))
            folder.Remove(file);
    }
}
