using System.Collections.Immutable;
using RebuildApi.Storage.Backups;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Storage;

/// <summary>Puts a backup in the place of what a data folder holds, when no program has it open. What stood there is kept.</summary>
/// <param name="attachments">The folder of attachments.</param>
/// <param name="options">Where the database is.</param>
public sealed class BackupRestore(string attachments, StoreOptions options)
{
    /// <summary>What restoring would do, step by step, in words; touches nothing.</summary>
    /// <exception cref="StorageUnavailableException"><c>locked</c>: a program has the database open.</exception>
    public async Task<ImmutableArray<string>> Steps(CheckedBackup from)
    {
        SqliteStore.Restore(options, DatabaseOf(from), dryRun: true);
        var missing = Missing(from).Count();
        var steps = ImmutableArray.CreateBuilder<string>();
        steps.Add(File.Exists(options.Path)
            ? $"keep the database that stands there as {options.Path}.replaced-(time), with its log"
            : "nothing stands there: no database is put aside");
        steps.Add(FormattableString.Invariant($"put {DatabaseOf(from)} there as {options.Path}: {from.Report.Bytes} bytes, schema {from.Report.Schema}, {from.Report.Chain.Entries} entries, head {from.Report.Chain.Head}"));
        if (from.Backup.Manifest is { } manifest)
            steps.Add(FormattableString.Invariant($"copy {missing} of {manifest.Attachments.Length} attachments to {attachments}; the others are there already, and none is removed"));
        steps.Add((await Replaced.Read(options, from.Report.Chain.Head)).GoesOn
            ? "revoke again the tokens that were revoked since the backup, close again what was opened to other shops and closed since, and erase again what was erased since"
            : "revoke every token of the backup, close what it opens to other shops, and print a new administrator's: what stands there does not tell which were revoked since, nor what was erased");
        steps.Add("put on record in its chain that it was restored, from what, and what it replaced");
        return steps.ToImmutable();
    }

    /// <summary>Restores a backup that was checked.</summary>
    /// <param name="from">The backup.</param>
    /// <param name="person">Who restores it.</param>
    /// <param name="cancellation">Gives up before anything is touched.</param>
    /// <exception cref="StorageUnavailableException"><c>locked</c>: a program has the database open. <c>damaged</c>: the backup does not verify.</exception>
    public async Task<Restored> Run(CheckedBackup from, string person, CancellationToken cancellation)
    {
        if (!from.Verified)
            throw new StorageUnavailableException("damaged", $"The backup does not verify: {string.Join(' ', from.Problems)}");
        cancellation.ThrowIfCancellationRequested();
        var replaced = await Replaced.Read(options, from.Report.Chain.Head);
        // Attachments first: a database that speaks of them must not stand there without them.
        foreach (var (source, target) in Missing(from))
            BackupFiles.Copy(source, target);
        SqliteStore.Restore(options, DatabaseOf(from), dryRun: false);
        return await PutOnRecord(from, person, replaced);
    }

    private static string DatabaseOf(CheckedBackup from) => from.Report.Path;

    private IEnumerable<(string Source, string Target)> Missing(CheckedBackup from) =>
        (from.Backup.Manifest?.Attachments ?? [])
            .Select(file => (Source: Path.Combine(from.Backup.Path, file.Name), Target: Path.Combine(attachments, Path.GetRelativePath(BackupShelf.AttachmentFolder, file.Name))))
            .Where(pair => !File.Exists(pair.Target));

    private async Task<Restored> PutOnRecord(CheckedBackup from, string person, Replaced replaced)
    {
        await using var store = SqliteStore.Open(options);
        Restored? done = null;
        await store.Write(new WriteRequest(person, "restore", null, "", DryRun: false), session =>
        {
            done = new AfterRestore(session, replaced, options.Time.GetUtcNow()).Run(from, person);
            return StoredAnswer.Nothing;
        }, CancellationToken.None);
        await ErasedFiles.Sweep(store, new AttachmentFolder(attachments), CancellationToken.None);
        return done!;
    }
}
