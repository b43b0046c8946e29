using System.Collections.Immutable;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Wire.Shop;

/// <summary>What came of taking a list over.</summary>
/// <param name="Rows">How many rows there were.</param>
/// <param name="Stored">How many were new or changed, and are stored.</param>
/// <param name="Unchanged">How many said what stood already.</param>
/// <param name="Refused">How many were left out because something is wrong with them.</param>
/// <param name="Errors">What is wrong, row by row; at most 100 entries.</param>
public sealed record ImportWire(int Rows, int Stored, int Unchanged, int Refused, ImmutableArray<FieldError> Errors);
