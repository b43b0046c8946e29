namespace RebuildApi.Storage;

/// <summary>Whether the database can be used.</summary>
/// <param name="Ready">Whether a change would be taken.</param>
/// <param name="Engine">Engine and version.</param>
/// <param name="Reason">Why not, or none.</param>
public sealed record StoreHealth(bool Ready, string Engine, string? Reason);
