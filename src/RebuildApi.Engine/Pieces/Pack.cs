using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pieces;

/// <summary>One or more pieces of a series stacked: a ring, or a shim pack that exists.</summary>
/// <param name="Members">Ids of the pieces, in the order of the series, a piece used twice standing twice.</param>
/// <param name="Thickness">Their nominal thickness together.</param>
/// <param name="Cost">What they cost together in minor units, or none when not every price is known.</param>
public sealed record Pack(ImmutableArray<string> Members, Length Thickness, long? Cost);
