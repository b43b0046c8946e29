using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;

namespace RebuildApi.Engine.Pairings;

/// <summary>Where a value lies to a window.</summary>
internal enum Lies
{
    /// <summary>Too near an end to say, or nothing known.</summary>
    Doubtful,

    /// <summary>Inside, ends included.</summary>
    Inside,

    /// <summary>Below the low end.</summary>
    Below,

    /// <summary>Above the high end.</summary>
    Above,
}

/// <summary>Puts a value with its uncertainty to a window by the shop's decision rule, the same that judges readings.</summary>
internal static class WindowTest
{
    /// <summary>Where the value lies. An end that is null is no limit.</summary>
    public static Lies Judge(Known value, Quantity? low, Quantity? high, Policy policy)
    {
        var window = new Window(value.Scale.Of(low), value.Scale.Of(high), value.Uncertainty, value.DegreesOfFreedom);
        var outcome = value.Point is { } point ? Decision.Of(point, window, policy) : BoundDecision.Of(value.Low, value.High, window, policy);
        return outcome switch
        {
            Outcome.Conforming => Lies.Inside,
            Outcome.Nonconforming => IsBelow(value, window) ? Lies.Below : Lies.Above,
            _ => Lies.Doubtful,
        };
    }

    private static bool IsBelow(Known value, Window window) => value.Point is { } point
        ? window.ChanceBelow(point) >= window.ChanceAbove(point)
        : value.High is { } high && high < window.Low;
}
