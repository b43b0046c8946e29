using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;

namespace RebuildApi.Engine.Conformity;

/// <summary>
/// The nearest values and uncertainties that turn an outcome, found with the very rule that made it, so that judging again with them
/// gives what was said. Lengths are whole nanometres, the first that turns it.
/// </summary>
internal static class WhatWouldChange
{
    public static ImmutableArray<Change> Of(string subject, Outcome outcome, double point, Window window, Scale scale, Policy policy) =>
        outcome == Outcome.Conforming
            ? [.. ToFail(subject, point, window, scale, policy)]
            : [.. ToConform(subject, point, window, scale, policy), .. ToBeSure(subject, outcome, point, window, scale, policy)];

    /// <summary>The nearest value that turns it at the same uncertainty; none when the uncertainty is too large for any value to do so.</summary>
    public static ImmutableArray<Change> ToConform(string subject, double point, Window window, Scale scale, Policy policy)
    {
        var inside = Inside(point, window, scale);
        var best = Decision.Of(inside, window, policy);
        if (best == Decision.Of(point, window, policy))
            return [];
        var first = Nearest(inside, point, scale, p => Decision.Of(p, window, policy) == best);
        return [new Change(first >= point ? "value-at-least" : "value-at-most", subject, scale.Quantity(first), best)];
    }

    /// <summary>The nearest value on either side that no longer conforms.</summary>
    private static IEnumerable<Change> ToFail(string subject, double point, Window window, Scale scale, Policy policy)
    {
        if (window.Low is { } low)
            yield return Failing("value-at-most", scale.Beside(low, -1));
        if (window.High is { } high)
            yield return Failing("value-at-least", scale.Beside(high, 1));

        Change Failing(string code, double outside)
        {
            var first = Nearest(outside, point, scale, p => Decision.Of(p, window, policy) != Outcome.Conforming);
            return new Change(code, subject, scale.Quantity(first), Decision.Of(first, window, policy));
        }
    }

    /// <summary>The largest uncertainty at which the value as it stands is decided as it would be without any.</summary>
    private static IEnumerable<Change> ToBeSure(string subject, Outcome outcome, double point, Window window, Scale scale, Policy policy)
    {
        var exact = Decision.Of(point, window with { Uncertainty = 0 }, policy);
        if (exact == outcome)
            yield break;
        var largest = Nearest(0, window.Uncertainty, scale, u => Decision.Of(point, window with { Uncertainty = u }, policy) == exact);
        if (largest > 0)
            yield return new Change("uncertainty-at-most", subject, scale.Quantity(largest), exact);
    }

    /// <summary>The likeliest point to conform, seen from a point: the middle of the window, or far inside an open one.</summary>
    private static double Inside(double point, Window window, Scale scale)
    {
        const double Far = 1e6;
        var inside = window.Middle
            ?? (window.Low is { } low ? Math.Max(low, point) + Far * window.Uncertainty : Math.Min(window.High!.Value, point) - Far * window.Uncertainty);
        return scale.Settled(inside);
    }

    /// <summary>The point nearest to <paramref name="to"/> at which a condition still holds that holds at <paramref name="from"/>, and not at to.</summary>
    private static double Nearest(double from, double to, Scale scale, Func<double, bool> holds)
    {
        const int EnoughForEveryBit = 200;
        for (var step = 0; step < EnoughForEveryBit; step++)
        {
            var middle = scale.Settled(from + (to - from) / 2);
            if (middle == from || middle == to)
                break;
            if (holds(middle))
                from = middle;
            else
                to = middle;
        }

        return from;
    }
}
