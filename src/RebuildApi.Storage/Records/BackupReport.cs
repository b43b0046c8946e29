using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>What opening and checking a copy found.</summary>
/// <param name="Path">The copy.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Schema">Number of its last migration; 0 when it can't be read.</param>
/// <param name="Rows">Table to number of rows.</param>
/// <param name="Chain">Its hash chain, walked.</param>
/// <param name="Problems">What is wrong with it, in words; empty when nothing is.</param>
public sealed record BackupReport(
    string Path,
    long Bytes,
    int Schema,
    ImmutableSortedDictionary<string, long> Rows,
    ChainReport Chain,
    ImmutableArray<string> Problems)
{
    /// <summary>Whether it can be restored.</summary>
    public bool Verified => Problems.IsEmpty;
}
