using System.Security.Cryptography;

namespace RebuildApi.Storage;

/// <summary>
/// The files that belong to the records, beside the database in a folder of their own, each under the SHA-256 of its content. A file is on the disk
/// before any record names it, and is never written again.
/// </summary>
public sealed class AttachmentFolder(string path)
{
    /// <summary>Name of the folder within the data folder.</summary>
    public const string Name = "attachments";

    /// <summary>Where the files lie.</summary>
    public string Path => path;

    /// <summary>The hash under which a content is kept.</summary>
    public static string NameOf(ReadOnlySpan<byte> content) => Convert.ToHexStringLower(SHA256.HashData(content));

    /// <summary>Keeps a file: written beside its place, flushed to the disk, then moved there. One that is there already and whole is left alone.</summary>
    /// <exception cref="StorageUnavailableException">It can't be written.</exception>
    public async ValueTask Keep(ReadOnlyMemory<byte> content, CancellationToken cancellation)
    {
        var place = PlaceOf(NameOf(content.Span));
        try
        {
            if (Read(NameOf(content.Span)) is not null)
                return;
            Directory.CreateDirectory(path);
            var partial = System.IO.Path.Combine(path, System.IO.Path.GetRandomFileName() + ".partial");
            await Write(partial, content, cancellation);
            File.Move(partial, place, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StorageUnavailableException("io-error", $"The folder of attachments can't be written: {e.Message}", e);
        }
    }

    /// <summary>A file, or null when it is missing or is not what its name says.</summary>
    public byte[]? Read(string sha256)
    {
        try
        {
            var content = File.ReadAllBytes(PlaceOf(sha256));
            return NameOf(content) == sha256 ? content : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Whether a file of the right size is there; its content is only looked at when it is read.</summary>
    public bool Has(string sha256, long bytes) => new FileInfo(PlaceOf(sha256)) is { Exists: true } file && file.Length == bytes;

    /// <summary>Whether there is a file of this name, whole or not.</summary>
    public bool Holds(string sha256) => File.Exists(PlaceOf(sha256));

    /// <summary>Removes a file; nothing when it is not there.</summary>
    /// <exception cref="StorageUnavailableException">It can't be removed.</exception>
    public void Remove(string sha256)
    {
        try
        {
            if (Directory.Exists(path))
                File.Delete(PlaceOf(sha256));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StorageUnavailableException("io-error", $"The file {Name}/{sha256} can't be removed: {e.Message}", e);
        }
    }

    private static async Task Write(string partial, ReadOnlyMemory<byte> content, CancellationToken cancellation)
    {
        try
        {
            await using var file = new FileStream(partial, FileMode.CreateNew, FileAccess.Write, FileShare.None);
            await file.WriteAsync(content, cancellation);
            await file.FlushAsync(cancellation);
            RandomAccess.FlushToDisk(file.SafeFileHandle);
        }
        catch
        {
            File.Delete(partial);
            throw;
        }
    }

    private string PlaceOf(string sha256) => System.IO.Path.Combine(path, sha256);
}
