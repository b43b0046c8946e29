using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Numerics;

namespace RebuildApi.Engine.Checking;

/// <summary>
/// One characteristic or clearance with everything that a verdict on one value needs, worked out beforehand, so that judging a row allocates
/// nothing. It decides as <see cref="Conformity.Conformance"/> does for a value with a standard uncertainty and many degrees of freedom.
/// </summary>
public sealed class CheckRule
{
    private readonly double _low;
    private readonly double _high;
    private readonly DecisionRule _decision;
    private readonly double _probability;

    private CheckRule(string subject, Limits limits, Policy policy)
    {
        var scale = new Scale((limits.Low ?? limits.High)!.Kind);
        Subject = subject;
        Limits = limits;
        Dimension = scale.Dimension;
        _low = scale.Of(limits.Low) ?? double.NaN;
        _high = scale.Of(limits.High) ?? double.NaN;
        _decision = policy.Decision;
        _probability = policy.Probability;
    }

    /// <summary>The address of the characteristic (<c>position/characteristic</c>), or the id of the clearance.</summary>
    public string Subject { get; }

    /// <summary>The limits that decide.</summary>
    public Limits Limits { get; }

    /// <summary>What it is a quantity of.</summary>
    public Dimension Dimension { get; }

    /// <summary>Makes a rule.</summary>
    /// <param name="subject">What it is about.</param>
    /// <param name="limits">The limits; at least one end.</param>
    /// <param name="policy">The policy as it stands for the criticality of the subject.</param>
    public static CheckRule Of(string subject, Limits limits, Policy policy) => new(subject, limits, policy);

    /// <summary>Judges a value.</summary>
    /// <param name="point">Whole nanometres for a length, SI for anything else.</param>
    /// <param name="uncertainty">Standard uncertainty on the same scale; 0 makes the value exact.</param>
    public CheckResult Judge(double point, double uncertainty)
    {
        var below = double.IsNaN(_low) ? 0 : Chance(_low - point, uncertainty);
        var above = double.IsNaN(_high) ? 0 : Chance(point - _high, uncertainty);
        var within = Math.Max(0, 1 - below - above);
        return new CheckResult(Decide(point, below, above, within), within, Margin(point));
    }

    private Outcome Decide(double point, double below, double above, double within) => _decision switch
    {
        DecisionRule.SimpleAcceptance => point < _low || point > _high ? Outcome.Nonconforming : Outcome.Conforming,
        DecisionRule.ProbabilityThreshold => within >= _probability ? Outcome.Conforming : Outcome.Nonconforming,
        _ when within >= _probability => Outcome.Conforming,
        _ => below >= _probability || above >= _probability ? Outcome.Nonconforming : Outcome.Inconclusive,
    };

    private double Margin(double point) => Math.Min(
        double.IsNaN(_low) ? double.PositiveInfinity : point - _low,
        double.IsNaN(_high) ? double.PositiveInfinity : _high - point);

    private static double Chance(double beyond, double uncertainty) =>
        uncertainty > 0 ? NormalTail.Cdf(beyond / uncertainty) : beyond > 0 ? 1 : 0;
}

/// <summary>A value held against limits.</summary>
/// <param name="Outcome">The outcome.</param>
/// <param name="Probability">Chance that the true value conforms, 0..1.</param>
/// <param name="Margin">Distance to the nearest limit on the scale of the rule (nanometres or SI), positive inside.</param>
public readonly record struct CheckResult(Outcome Outcome, double Probability, double Margin);
