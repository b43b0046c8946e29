using System.Collections.Immutable;
using RebuildApi.Server.Backups;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>A backup: one folder with the database, the attachments and a manifest.</summary>
/// <param name="Id">Name of its folder, which is the time it was made; of one that failed the same.</param>
/// <param name="Made">When, UTC.</param>
/// <param name="By">Who asked for it; <c>schedule</c> when nobody.</param>
/// <param name="Verified">Whether it was opened and checked and can be restored.</param>
/// <param name="Problems">What is wrong with it, in words; why it failed.</param>
/// <param name="Folder">Where it lies.</param>
/// <param name="Bytes">How large it is.</param>
/// <param name="Attachments">How many attachments it holds.</param>
/// <param name="Schema">Number of the last migration of its database.</param>
/// <param name="Entries">How many entries its hash chain has.</param>
/// <param name="Head">Hash of the last of them; note it outside.</param>
public sealed record BackupWire(
    string Id,
    DateTimeOffset? Made,
    string? By,
    bool Verified,
    ImmutableArray<string> Problems,
    string? Folder,
    long? Bytes,
    int? Attachments,
    int? Schema,
    long? Entries,
    string? Head)
{
    /// <summary>From the shelf.</summary>
    public static BackupWire From(Backup backup) => From(backup, backup.Problems);

    /// <summary>From one that was read again.</summary>
    public static BackupWire From(CheckedBackup read) => From(read.Backup, read.Problems);

    /// <summary>From one that failed.</summary>
    public static BackupWire From(FailedBackup failed) => new(
        "failed-" + failed.Time.UtcDateTime.ToString("yyyyMMdd'T'HHmmssfff'Z'", System.Globalization.CultureInfo.InvariantCulture),
        failed.Time, failed.By, false, [failed.Reason], null, null, null, null, null, null);

    private static BackupWire From(Backup backup, ImmutableArray<string> problems)
    {
        var said = backup.Manifest;
        var bytes = said is null ? (long?)null : said.Attachments.Sum(a => a.Bytes) + said.Database.Bytes;
        return new(
            backup.Name, said?.Made, said?.By, problems.IsEmpty, problems, backup.Path, bytes, said?.Attachments.Length, said?.Schema, said?.Entries, said?.Head);
    }
}
