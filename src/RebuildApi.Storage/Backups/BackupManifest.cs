using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Storage;

/// <summary>What a backup holds and how it was found when it was made; <c>manifest.json</c> in its folder.</summary>
/// <param name="Format">Always <c>rebuild-backup/1</c>.</param>
/// <param name="Made">When, UTC.</param>
/// <param name="By">Who asked for it: a person, a token's name, or <c>schedule</c>.</param>
/// <param name="Schema">Number of the last migration of the database.</param>
/// <param name="Rows">Table to number of rows.</param>
/// <param name="Entries">How many entries its hash chain has.</param>
/// <param name="Head">Hash of the last of them.</param>
/// <param name="Database">The copy of the database.</param>
/// <param name="Attachments">The attachments, each named by its SHA-256.</param>
public sealed record BackupManifest(
    string Format,
    DateTimeOffset Made,
    string By,
    int Schema,
    ImmutableSortedDictionary<string, long> Rows,
    long Entries,
    string Head,
    BackupFile Database,
    ImmutableArray<BackupFile> Attachments)
{
    /// <summary>The one format there is.</summary>
    public const string TheFormat = "rebuild-backup/1";

    /// <summary>Who makes those that are made by themselves.</summary>
    public const string BySchedule = "schedule";
}

/// <summary>A file of a backup.</summary>
/// <param name="Name">Its path within the backup's folder, with <c>/</c> between.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Sha256">SHA-256 of its bytes, lower-case hex.</param>
public sealed record BackupFile(string Name, long Bytes, string Sha256);

/// <summary>A backup that was found, with what checking it found.</summary>
/// <param name="Name">Name of its folder.</param>
/// <param name="Path">Its folder.</param>
/// <param name="Manifest">What it says of itself; none when that can't be read.</param>
/// <param name="Problems">What is wrong with it, in words; empty when nothing is.</param>
public sealed record Backup(string Name, string Path, BackupManifest? Manifest, ImmutableArray<string> Problems)
{
    /// <summary>Whether it can be restored.</summary>
    public bool Verified => Problems.IsEmpty;
}

/// <summary>How manifests are written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(BackupManifest))]
internal sealed partial class BackupJson : JsonSerializerContext;
