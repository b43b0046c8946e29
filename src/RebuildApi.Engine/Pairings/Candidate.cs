using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings;

/// <summary>A part that could go in, from the shelf, the catalogue or another unit, with what is known of it.</summary>
/// <param name="Component">The part.</param>
/// <param name="Measurements">What was read on it.</param>
/// <param name="Findings">What was seen on it.</param>
/// <param name="Instruments">The instruments that its readings name.</param>
public sealed record Candidate(
    Component Component,
    ImmutableArray<Measurement> Measurements,
    ImmutableArray<Finding> Findings,
    ImmutableArray<InstrumentState> Instruments)
{
    /// <summary>A part of which nothing is known but what it declares.</summary>
    public static Candidate Of(Component component) => new(component, [], [], []);
}

/// <summary>How a candidate would run with what is chosen already.</summary>
/// <param name="Component">The candidate.</param>
/// <param name="Outcome">The worst of its pairings; not assessed when the family has no rule for the position.</param>
/// <param name="Pairings">The verdict of each rule that the position takes part in, without cures.</param>
/// <param name="Settles">What to look at on it, or beside it, so that a doubt goes away.</param>
public sealed record CandidateVerdict(
    Component Component,
    Compatibility Outcome,
    ImmutableArray<PairingVerdict> Pairings,
    ImmutableArray<Address> Settles);
