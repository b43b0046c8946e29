using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>An answer with everything that it rests on.</summary>
/// <param name="Subject">A characteristic (<c>position/characteristic</c>), a part (its position) or a clearance (its id).</param>
/// <param name="Outcome">The outcome.</param>
/// <param name="Probability">Chance that the true value conforms, 0..1; none when nothing is known.</param>
/// <param name="Value">What is known of the value.</param>
/// <param name="Against">The limits it was judged by.</param>
/// <param name="Margin">Distance from the value to the nearest limit in SI; positive inside.</param>
/// <param name="Reasons">Why.</param>
/// <param name="WouldChange">What would change it.</param>
/// <param name="Rules">Whose rules.</param>
/// <param name="InputsSha256">Hash of what it was made from.</param>
public sealed record Verdict(
    string Subject,
    Outcome Outcome,
    double? Probability,
    Estimate? Value,
    Limits? Against,
    double? Margin,
    ImmutableArray<Reason> Reasons,
    ImmutableArray<Change> WouldChange,
    RuleIdentity Rules,
    string InputsSha256)
{
    /// <summary>The ends of what was read, for a characteristic that is more than one number, as roundness is; none for any other.</summary>
    public Extremes? Extremes { get; init; }
}

/// <summary>How far readings of one thing lie apart.</summary>
/// <param name="Smallest">The smallest, as the mean of its repeats at one place.</param>
/// <param name="Largest">The largest.</param>
/// <param name="Spread">Their difference.</param>
public sealed record Extremes(Quantity Smallest, Quantity Largest, Quantity Spread);

/// <summary>One thing that would change a verdict. Applied to the snapshot and judged again, it leads to the outcome it names.</summary>
/// <param name="Code">A code of the engine's list: <c>value-at-least</c>, <c>value-at-most</c>, <c>read-it</c>, <c>uncertainty-at-most</c>.</param>
/// <param name="At">The characteristic or clearance it is about.</param>
/// <param name="Value">The value, or the uncertainty, that turns it; none where a reading is asked for.</param>
/// <param name="LeadsTo">The outcome it leads to; for <c>read-it</c>, what is left open.</param>
public sealed record Change(string Code, string At, Quantity? Value, Outcome LeadsTo);
