using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>One page of a list in the order of ids.</summary>
/// <param name="Items">The items.</param>
/// <param name="Next">Where the next page begins, or null on the last.</param>
public sealed record Page<T>(ImmutableArray<T> Items, string? Next);
