using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Conformity;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>A clearance from its members: positive coefficients open the gap, negative ones close it.</summary>
/// <param name="Terms">The members.</param>
/// <param name="Window">What the gap must be.</param>
/// <param name="Rule">The decision rule.</param>
/// <param name="Probability">How sure it must be.</param>
public sealed record LoopRequest(
    [Entries(2, 60)] ImmutableArray<LoopMemberRequest> Terms,
    WindowRequest? Window = null,
    DecisionRule Rule = DecisionRule.Guarded,
    [Between(0.5001, 0.999999)] decimal Probability = 0.95m);

/// <summary>One member of a clearance.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Length">Its dimension.</param>
/// <param name="Numerator">Signed coefficient, not 0.</param>
/// <param name="Denominator">Its denominator.</param>
/// <param name="StandardUncertainty">Standard uncertainty, where it was measured.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of that; many when not said.</param>
/// <param name="HalfWidth">Half-width of its drawing tolerance, where it was not measured.</param>
public sealed record LoopMemberRequest(
    [Words(100)] string Name,
    [Of(Dimension.Length)] SentQuantity Length,
    [Between(-1000, 1000)] int Numerator = 1,
    [Between(1, 1000)] int Denominator = 1,
    SentQuantity? StandardUncertainty = null,
    [Between(1, 1e9)] decimal? DegreesOfFreedom = null,
    [Of(Dimension.Length, Sign = SignRule.NotNegative)] SentQuantity? HalfWidth = null);

/// <summary>A window of lengths, ends included; at least one end.</summary>
/// <param name="Low">The smallest allowed.</param>
/// <param name="High">The largest allowed.</param>
/// <param name="Target">What is wanted.</param>
public sealed record WindowRequest(
    [Of(Dimension.Length)] SentQuantity? Low = null, [Of(Dimension.Length)] SentQuantity? High = null, [Of(Dimension.Length)] SentQuantity? Target = null)
{
    /// <summary>To the contract; null with a complaint when it has no end or is upside down.</summary>
    public Limits? ToContract(string pointer, Complaints complaints)
    {
        if (Low is null && High is null)
            complaints.Add(pointer + "/low", FieldProblems.MissingField, "A window needs at least one end: low or high.");
        else if (Low?.Length > High?.Length)
            complaints.Add(pointer + "/high", FieldProblems.OutOfRange, "The window is upside down.", High!.Value.Text);
        else if (Target?.Length < Low?.Length || Target?.Length > High?.Length)
            complaints.Add(pointer + "/target", FieldProblems.OutOfRange, "The target lies outside the window.", Target!.Value.Text);
        else
            return new Limits(Low?.Read, High?.Read, Target?.Read, new Source(SourceKind.Judgement, "as sent"));
        return null;
    }
}

/// <summary>A clearance.</summary>
/// <param name="Gap">The gap.</param>
/// <param name="StandardUncertainty">Its standard uncertainty.</param>
/// <param name="DegreesOfFreedom">Effective degrees of freedom; absent means many.</param>
/// <param name="WorstLow">The smallest gap that the tolerances allow.</param>
/// <param name="WorstHigh">The largest gap that the tolerances allow.</param>
/// <param name="RootSumSquare">Statistical half-width.</param>
/// <param name="Terms">The members with what each adds to the doubt.</param>
/// <param name="Outcome">The gap against the window; not assessed without one.</param>
/// <param name="Probability">Chance of lying in the window.</param>
/// <param name="WouldChange">What would change the outcome.</param>
public sealed record LoopWire(
    QuantityWire Gap,
    QuantityWire StandardUncertainty,
    double? DegreesOfFreedom,
    QuantityWire? WorstLow,
    QuantityWire? WorstHigh,
    QuantityWire? RootSumSquare,
    ImmutableArray<LoopTermWire> Terms,
    Outcome Outcome,
    double? Probability,
    ImmutableArray<ChangeWire> WouldChange)
{
    /// <summary>From the engine.</summary>
    public static LoopWire From(LoopValue loop, Assessment? judged, Display show) => new(
        show.Of(loop.Estimate.Value!),
        show.Metres(loop.Estimate.StandardUncertainty),
        Numbers.Finite(loop.Estimate.DegreesOfFreedom),
        show.LengthMaybe(loop.WorstLow),
        show.LengthMaybe(loop.WorstHigh),
        loop.RootSumSquare is { } rss ? show.Metres(rss) : null,
        [.. loop.Terms.Select(t => LoopTermWire.From(t, show))],
        judged?.Outcome ?? Outcome.NotAssessed,
        Numbers.Finite(judged?.Probability),
        [.. (judged?.WouldChange ?? []).Select(c => ChangeWire.From(c, show))]);
}
