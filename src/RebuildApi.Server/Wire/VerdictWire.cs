using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Wire;

/// <summary>An answer with everything that it rests on.</summary>
/// <param name="Subject">A characteristic, a part or a clearance.</param>
/// <param name="Outcome">The outcome. Only conforming counts as good.</param>
/// <param name="Probability">Chance that the true value conforms.</param>
/// <param name="Value">What is known of the value.</param>
/// <param name="Against">The limits it was judged by.</param>
/// <param name="Margin">Distance to the nearest limit; positive inside.</param>
/// <param name="Reasons">Why.</param>
/// <param name="WouldChange">What would change it.</param>
/// <param name="Decision">What a person chose against or within it. The outcome stays what it is.</param>
/// <param name="Rules">Whose rules.</param>
/// <param name="InputsSha256">Hash of what it was made from.</param>
/// <param name="Smallest">The smallest reading, for a characteristic that is more than one number, as roundness is.</param>
/// <param name="Largest">The largest reading of such a one.</param>
/// <param name="Spread">Their difference.</param>
public sealed record VerdictWire(
    string Subject,
    Outcome Outcome,
    double? Probability,
    EstimateWire? Value,
    LimitsWire? Against,
    QuantityWire? Margin,
    ImmutableArray<ReasonWire> Reasons,
    ImmutableArray<ChangeWire> WouldChange,
    DecisionBesideWire? Decision,
    RuleWire Rules,
    string InputsSha256,
    QuantityWire? Smallest,
    QuantityWire? Largest,
    QuantityWire? Spread) : IInWords
{
    /// <summary>From the contract; where the family is there, its parts are called by the names of their positions.</summary>
    public static VerdictWire From(Verdict verdict, DecisionsBeside decisions, Display show, FamilyIndex? family = null) => new(
        verdict.Subject,
        verdict.Outcome,
        Numbers.Finite(verdict.Probability),
        EstimateWire.From(verdict.Value, show),
        LimitsWire.From(verdict.Against, show),
        verdict.Margin is { } margin && DimensionOf(verdict) is { } dimension ? show.Difference(margin, dimension) : null,
        [.. verdict.Reasons.Select(r => family is null ? ReasonWire.From(r) : ReasonWire.From(r, family))],
        [.. verdict.WouldChange.Select(c => ChangeWire.From(c, show))],
        decisions.On(verdict.Subject),
        RuleWire.From(verdict.Rules),
        verdict.InputsSha256,
        show.OfMaybe(verdict.Extremes?.Smallest),
        show.OfMaybe(verdict.Extremes?.Largest),
        verdict.Extremes is { } ends ? show.Difference(ends.Spread.InSi, ends.Spread.Kind) : null);

    /// <inheritdoc/>
    public string InWords() => $"{Subject}: {Kebab.Of(Outcome)}";

    private static Dimension? DimensionOf(Verdict v) => (v.Value?.Value ?? v.Against?.Low ?? v.Against?.High)?.Kind;
}
