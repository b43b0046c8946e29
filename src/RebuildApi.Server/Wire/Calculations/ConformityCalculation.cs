using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>A value, or bounds of it, held against limits.</summary>
/// <param name="Value">The value.</param>
/// <param name="AtLeast">A lower bound, where no value is known.</param>
/// <param name="AtMost">An upper bound, where no value is known.</param>
/// <param name="StandardUncertainty">Its standard uncertainty; 0 when not said.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom; many when not said.</param>
/// <param name="Low">The lowest value allowed.</param>
/// <param name="High">The highest value allowed.</param>
/// <param name="Dimension">What is measured.</param>
/// <param name="Rule">The decision rule.</param>
/// <param name="Probability">How sure it must be.</param>
/// <param name="Process">The process the part comes from, where it is known: adds the risks over all its parts.</param>
public sealed record ConformityRequest(
    SentQuantity? Value = null,
    SentQuantity? AtLeast = null,
    SentQuantity? AtMost = null,
    SentQuantity? StandardUncertainty = null,
    [Between(1, 1e9)] decimal? DegreesOfFreedom = null,
    SentQuantity? Low = null,
    SentQuantity? High = null,
    Dimension Dimension = Dimension.Length,
    DecisionRule Rule = DecisionRule.Guarded,
    [Between(0.5001, 0.999999)] decimal Probability = 0.95m,
    ProcessRequest? Process = null);

/// <summary>A process: parts spread normally.</summary>
/// <param name="Mean">Mean of its parts.</param>
/// <param name="StandardDeviation">Standard deviation of its parts.</param>
/// <param name="AcceptLow">Lowest reading that is accepted; the low limit when not said.</param>
/// <param name="AcceptHigh">Highest reading that is accepted; the high limit when not said.</param>
public sealed record ProcessRequest(SentQuantity Mean, SentQuantity StandardDeviation, SentQuantity? AcceptLow = null, SentQuantity? AcceptHigh = null);

/// <summary>What a value is against its limits.</summary>
/// <param name="Outcome">The outcome. Only conforming counts as good.</param>
/// <param name="Probability">Chance that the true value conforms.</param>
/// <param name="Margin">Distance to the nearest limit; positive inside.</param>
/// <param name="WouldChange">What would change the outcome.</param>
/// <param name="Risks">Risks over all parts of the process.</param>
public sealed record ConformityWire(Outcome Outcome, double? Probability, QuantityWire? Margin, ImmutableArray<ChangeWire> WouldChange, ProcessRisksWire? Risks)
{
    /// <summary>From the engine.</summary>
    public static ConformityWire From(Assessment a, ProcessRisksWire? risks, Dimension dimension, Display show) => new(
        a.Outcome,
        Numbers.Finite(a.Probability),
        a.Margin is { } margin && double.IsFinite(margin) ? show.Difference(margin, dimension) : null,
        [.. a.WouldChange.Select(c => ChangeWire.From(c, show))],
        risks);
}

/// <summary>Risks over all parts of a process (JCGM 106:2012, 9.5).</summary>
/// <param name="Conformance">Chance that a part is within its limits.</param>
/// <param name="Acceptance">Chance that a part is accepted.</param>
/// <param name="FalseAccept">Global consumer's risk: chance of a part beyond its limits and accepted.</param>
/// <param name="FalseReject">Global producer's risk: chance of a part within its limits and rejected.</param>
/// <param name="FalseAcceptOfAccepted">Chance that an accepted part is beyond its limits.</param>
/// <param name="Capability">Cpk of the process.</param>
public sealed record ProcessRisksWire(
    double? Conformance, double? Acceptance, double? FalseAccept, double? FalseReject, double? FalseAcceptOfAccepted, double? Capability)
{
    /// <summary>From the engine.</summary>
    public static ProcessRisksWire From(GlobalRisk g, SpecificRisk s) => new(
        Numbers.Finite(g.Conformance),
        Numbers.Finite(g.Acceptance),
        Numbers.Finite(g.FalseAccept),
        Numbers.Finite(g.FalseReject),
        Numbers.Finite(g.FalseAcceptOfAccepted),
        Numbers.Finite(s.Capability));
}
