using System.Collections.Immutable;

namespace RebuildApi.Server.Wire;

/// <summary>One page of a list.</summary>
/// <param name="Items">The entries.</param>
/// <param name="Next">The whole address of the next page; absent on the last.</param>
/// <param name="AsOf">When the list was read, UTC.</param>
/// <typeparam name="T">What is listed.</typeparam>
public record ListOf<T>(ImmutableArray<T> Items, string? Next, DateTimeOffset AsOf);
