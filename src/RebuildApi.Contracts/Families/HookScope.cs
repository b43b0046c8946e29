using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>A rule in code, and what it may look at. It sees a snapshot cut down to these positions, and may answer about nothing else.</summary>
/// <param name="Id">Given back to <see cref="IFamilyPlugin.Judge"/>.</param>
/// <param name="Positions">The positions it reads.</param>
/// <param name="BudgetMilliseconds">How long one call may take.</param>
public sealed record HookScope(string Id, ImmutableArray<string> Positions, int BudgetMilliseconds);
