using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>A measuring instrument of the shop.</summary>
/// <param name="State">What the engine needs to know of it.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Version">Row version.</param>
public sealed record Instrument(InstrumentState State, string Name, long Version);
