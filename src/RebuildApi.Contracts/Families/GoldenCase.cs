using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>A worked case that the rules must reproduce.</summary>
/// <param name="Name">What it shows.</param>
/// <param name="Snapshot">What was there, seen and read.</param>
/// <param name="Expected">What must come out.</param>
public sealed record GoldenCase(string Name, UnitSnapshot Snapshot, ImmutableArray<Expectation> Expected);

/// <summary>One answer that must come out.</summary>
/// <param name="Subject">A characteristic (<c>position/characteristic</c>), a clearance or a pairing (its id).</param>
/// <param name="Outcome">Its outcome word: <c>conforming</c>, <c>conditional</c>.</param>
public sealed record Expectation(string Subject, string Outcome);
