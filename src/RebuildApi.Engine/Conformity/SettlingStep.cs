using RebuildApi.Engine.Statistics;

namespace RebuildApi.Engine.Conformity;

/// <summary>Something that may settle an inconclusive verdict.</summary>
/// <param name="Code"><c>more-readings</c> with the instruments that were used, or <c>other-instrument</c>.</param>
/// <param name="Instrument">Id of the other instrument, or none.</param>
/// <param name="Readings">How many readings to take.</param>
/// <param name="Settles">Simulated share of cases in which the verdict is then conforming or nonconforming, with its interval.</param>
public sealed record SettlingStep(string Code, string? Instrument, int Readings, Share Settles);
