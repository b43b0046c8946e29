using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Conformity;

/// <summary>A value held against its limits.</summary>
/// <param name="Outcome">The outcome.</param>
/// <param name="Probability">Chance that the true value conforms, 0..1; none when there is no value.</param>
/// <param name="Margin">Distance from the value to the nearest limit in SI, positive inside; none when there is no value.</param>
/// <param name="Reasons">Why.</param>
/// <param name="WouldChange">What would change it.</param>
public sealed record Assessment(
    Outcome Outcome,
    double? Probability,
    double? Margin,
    ImmutableArray<Reason> Reasons,
    ImmutableArray<Change> WouldChange);
