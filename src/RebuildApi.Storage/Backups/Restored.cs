using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>What was seen to when a backup was put in its place.</summary>
/// <param name="Known">Whether what stood there told what was revoked and erased since the backup.</param>
/// <param name="Revoked">Names of the tokens that were revoked: those revoked since, or all when that is not known.</param>
/// <param name="Erased">In how many entries texts were erased again.</param>
public sealed record Restored(bool Known, ImmutableArray<string> Revoked, int Erased);
