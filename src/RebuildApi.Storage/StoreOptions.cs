namespace RebuildApi.Storage;

/// <summary>Where the shop's database is, and whose.</summary>
/// <param name="Path">The file; made when it does not exist.</param>
/// <param name="Time">The clock.</param>
public sealed record StoreOptions(string Path, TimeProvider Time)
{
    /// <summary>The shop whose rows are read and written; every key begins with it.</summary>
    public string Shop { get; init; } = "main";

    /// <summary>Connection to a PostgreSQL database, which then stands in the place of the file; null for the file.</summary>
    public string? Database { get; init; }

    /// <summary>Whether it is opened for reading only; changes are then refused as <c>read-only</c>.</summary>
    public bool ReadOnly { get; init; }

    /// <summary>Largest size in pages of 4096 bytes; null for as large as the disk.</summary>
    public int? MaxPages { get; init; }

    /// <summary>How long one try waits for another process that holds the file, or the writing of the shop; a file is tried five times.</summary>
    public TimeSpan BusyTimeout { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>How long an idempotency key is remembered.</summary>
    public TimeSpan KeepKeys { get; init; } = TimeSpan.FromDays(7);

    /// <summary>At most how many changes share one commit.</summary>
    public int GroupSize { get; init; } = 256;
}
