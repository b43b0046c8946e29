namespace RebuildApi.Storage;

/// <summary>Removes the files that erasures name. It may be done again at any time: after a power cut, or when a backup brought them back.</summary>
public static class ErasedFiles
{
    /// <summary>Removes those that are still there and that nothing recorded since shows.</summary>
    /// <returns>How many.</returns>
    public static async Task<int> Sweep(IStore store, AttachmentFolder folder, CancellationToken cancellation)
    {
        var erasures = await store.All<Erasure>(ShopFilter.Every, cancellation);
        var left = erasures.SelectMany(e => e.Files).Where(folder.Holds).ToHashSet(StringComparer.Ordinal);
        if (left.Count == 0)
            return 0;
        // On the one writer, and so between two changes: a record that shows such a file again either stands already and keeps it, or finds it gone and is refused.
        await store.Write(new WriteRequest("service", "sweep", null, "", DryRun: false), session =>
        {
            left.ExceptWith(Shown(session, erasures));
            foreach (var file in left)
                folder.Remove(file);
            return StoredAnswer.Nothing;
        }, cancellation);
        return left.Count;
    }

    // Only by erasures that were committed: one that is still under way may be undone, and what it names must be there then.
    private static IEnumerable<string> Shown(IWriteSession session, IEnumerable<Erasure> erasures)
    {
        var ofUnit = erasures.ToLookup(e => e.Unit, StringComparer.Ordinal);
        return session.All<Attachment>()
            .Where(a => !ofUnit[a.Unit].Any(e => e.Time >= a.Time && e.Files.Contains(a.Sha256)))
            .Select(a => a.Sha256);
    }
}
