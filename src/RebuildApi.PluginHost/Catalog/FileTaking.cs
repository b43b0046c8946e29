using System.Collections.Immutable;
using System.Text.Json;
using RebuildApi.Contracts;
using RebuildApi.PluginHost.Trust;

namespace RebuildApi.PluginHost.Catalog;

/// <summary>
/// Takes up families that were written as files, through the plug-in that reads them. A file holds no code, but it decides what a shop is told: like an
/// assembly it counts only when an administrator approved its hash, and a changed file is a new decision.
/// </summary>
internal sealed class FileTaking(PluginHostOptions options, Approvals approvals, FamilyChecking checking)
{
    private const int MostFiles = 1000;
    private const string NoReader = "No plug-in that reads family files is loaded.";

    /// <summary>The files that lie in the folders, by name; where two folders hold the same name, the first one counts.</summary>
    public IEnumerable<string> Paths() => options.FamilyFolders
        .Where(Directory.Exists)
        .SelectMany(f => Directory.EnumerateFiles(f).Where(FamilyFile.IsByName).Take(MostFiles))
        .DistinctBy(f => Path.GetFileName(f), StringComparer.Ordinal)
        .OrderBy(f => Path.GetFileName(f), StringComparer.Ordinal);

    /// <summary>Where a file of this name lies, or null.</summary>
    public string? PathOf(string id) => Paths().FirstOrDefault(p => Path.GetFileName(p) == id);

    /// <summary>Reads the bytes of a file, or null when it breaks a rule.</summary>
    public FamilyFile? Look(string path)
    {
        try
        {
            return FamilyFile.Read(path, options.BytesPerFamilyFile);
        }
        catch (Exception e) when (e is PluginFault or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Takes up a file. Never throws for what is found there: that becomes the state.</summary>
    public PluginEntry Take(string path, PluginEntry? reader)
    {
        var id = Path.GetFileName(path);
        FamilyFile? file = null;
        try
        {
            file = FamilyFile.Read(path, options.BytesPerFamilyFile);
            return approvals.Cover(id, file.Sha256)
                ? Taken(file, Read(id, file.Bytes, reader), reader)
                : Idle(PluginState.AwaitingApproval, "An administrator must approve its hash before its family is used.");
        }
        catch (PluginFault fault)
        {
            return Idle(fault.State, fault.Message);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Idle(PluginState.Failed, "It can't be read: " + PluginFault.Tame(e.Message));
        }

        PluginEntry Idle(PluginState state, string reason) => PluginEntry.Idle(id, state, reason, file?.Sha256, null, options.Time.GetUtcNow());
    }

    /// <summary>Reads a file and checks what it says; what is found there is shown where it stands.</summary>
    public ReadResult Read(string fileName, byte[] utf8, PluginEntry? reader)
    {
        try
        {
            var bytes = reader?.Running!.Door!.Read(fileName, utf8) ?? throw new PluginFault(PluginState.Failed, "reader-missing", NoReader);
            var read = JsonSerializer.Deserialize(bytes, ContractJson.Default.ReadResult) ?? throw PluginFault.Invalid("It read nothing at all.");
            return read.Family is null
                ? read
                : read with { Diagnostics = [.. read.Diagnostics, .. Marked.Show(checking.Unproven(read.Family), fileName, read.Marks)] };
        }
        catch (PluginFault fault)
        {
            return Failed(fileName, fault.Message);
        }
        catch (JsonException e)
        {
            return Failed(fileName, "What the reader answered is not complete: " + PluginFault.Tame(e.Message));
        }
    }

    /// <summary>Writes a family as a file.</summary>
    /// <exception cref="NotSupportedException">No plug-in writes files, or it can't write this family.</exception>
    public static byte[] Write(Family family, PluginEntry? reader)
    {
        try
        {
            return reader?.Running!.Door!.Write(JsonSerializer.SerializeToUtf8Bytes(family, ContractJson.Default.Family)) ?? throw new NotSupportedException(NoReader);
        }
        catch (PluginFault fault)
        {
            throw new NotSupportedException(fault.Message, fault);
        }
    }

    private static ReadResult Failed(string fileName, string why) =>
        new(null, [new Diagnostic(fileName, 0, 0, "", "reader-failed", "The file could not be read: " + why, true)]);

    private PluginEntry Taken(FamilyFile file, ReadResult read, PluginEntry? reader)
    {
        var by = $"Data, read by {reader?.Status.Id ?? "nobody"}; it has no code of its own.";
        var errors = read.Diagnostics.Where(d => d.IsError).ToImmutableArray();
        var status = new PluginStatus(
            file.Id, PluginState.Loaded, "In use.", read.Family?.Version.SemVer, null, file.Sha256, [], [], reader?.Status.ContractVersion, by, 0, options.Time.GetUtcNow())
        {
            Doubts = [.. read.Diagnostics.Where(d => !d.IsError)],
        };
        if (read.Family is { } family && errors.IsEmpty)
            return new PluginEntry(status, new RunningPlugin([new LoadedFamily(family, new PluginIdentity(file.Id, family.Version.SemVer, file.Sha256))], null, Reads: false));
        var refused = new RefusedFamily(read.Family?.Version.Id ?? file.Id, "the file has errors.", errors);
        return new PluginEntry(status with { State = PluginState.Refused, Reason = $"The file has {errors.Length} errors.", RefusedFamilies = [refused] }, null);
    }
}
