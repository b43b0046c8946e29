using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;

namespace RebuildApi.Engine.Conformity;

/// <summary>A value, its uncertainty, the limits and the shop's rule → an outcome with its reasons.</summary>
public static class Conformance
{
    /// <summary>Holds what is known of a value against limits.</summary>
    /// <param name="subject">What it is about: <c>position/characteristic</c> or the id of a clearance.</param>
    /// <param name="value">What is known. Whole nanometres stay exact when its uncertainty is 0.</param>
    /// <param name="limits">The limits, of the same dimension.</param>
    /// <param name="policy">The decision rule.</param>
    /// <returns>Never conforming by default: without a value or a bound it is not assessed.</returns>
    /// <exception cref="ArgumentException">
    /// Value and limits are of different dimensions, the value's bounds contradict each other, or the policy's probability is not in 0.5..1.
    /// </exception>
    public static Assessment Assess(string subject, Estimate value, Limits limits, Policy policy) => Assess(subject, value, limits, policy, null);

    /// <summary>The same, with the trials that the estimate was found by, if it was: they say how it is spread.</summary>
    internal static Assessment Assess(string subject, Estimate value, Limits limits, Policy policy, MonteCarloResult? trials)
    {
        if (policy.Probability is not (> 0.5 and < 1))
            throw new ArgumentException("A conformance probability lies between 0.5 and 1, both excluded.", nameof(policy));
        var scale = new Scale((limits.Low ?? limits.High)!.Kind);
        RequireSameDimension(value, scale);
        if (scale.Of(value.Low) > scale.Of(value.High))
            throw new ArgumentException("The bounds of a value contradict each other: the lower lies above the upper.", nameof(value));
        var window = Window.Of(limits, value, scale, trials);
        if (scale.Of(value.Value) is { } point && BoundsAgree(point, value, scale))
            return OfPoint(subject, point, window, scale, policy);
        return value.Low is null && value.High is null
            ? NotRead(subject)
            : OfBounds(subject, value, window, scale, policy);
    }

    /// <summary>Nothing is known: say what to do about it.</summary>
    public static Assessment NotRead(string subject) => new(
        Outcome.NotAssessed,
        null,
        null,
        [ConformityReasons.NotRead(subject)],
        [new Change("read-it", subject, null, Outcome.NotAssessed)]);

    private static Assessment OfPoint(string subject, double point, Window window, Scale scale, Policy policy)
    {
        var outcome = Decision.Of(point, window, policy);
        return new Assessment(
            outcome,
            window.ChanceWithin(point),
            window.Margin(point) * scale.InSi,
            [ConformityReasons.OfPoint(subject, outcome, point, window, scale, policy)],
            WhatWouldChange.Of(subject, outcome, point, window, scale, policy));
    }

    private static Assessment OfBounds(string subject, Estimate value, Window window, Scale scale, Policy policy)
    {
        var (low, high) = (scale.Of(value.Low), scale.Of(value.High));
        var outcome = BoundDecision.Of(low, high, window, policy);
        ImmutableArray<Change> changes = outcome switch
        {
            Outcome.Conforming => [],
            Outcome.Nonconforming => WhatWouldChange.ToConform(subject, high < window.Low ? high.Value : low ?? high!.Value, window, scale, policy),
            _ => [new Change("read-it", subject, null, Outcome.NotAssessed)],
        };
        return new Assessment(outcome, null, null, [ConformityReasons.OfBounds(subject, outcome, low, high, window, scale)], changes);
    }

    /// <summary>A value that a bound contradicts decides nothing; the bound does.</summary>
    private static bool BoundsAgree(double point, Estimate value, Scale scale) => !(point < scale.Of(value.Low)) && !(point > scale.Of(value.High));

    private static void RequireSameDimension(Estimate value, Scale scale)
    {
        foreach (var quantity in new[] { value.Value, value.Low, value.High })
        {
            if (quantity is not null && quantity.Kind != scale.Dimension)
                throw new ArgumentException($"A value of {quantity.Kind} is not judged by limits of {scale.Dimension}.", nameof(value));
        }
    }
}
