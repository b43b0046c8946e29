using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>A value with its unit.</summary>
/// <param name="Value">The number.</param>
/// <param name="Unit">The unit, as a shop writes it.</param>
public sealed record QuantityWire(SentNumber Value, string Unit);
