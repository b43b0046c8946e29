using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;

namespace RebuildApi.Engine.Conformity;

/// <summary>The reasons of a conformity verdict. Codes of quantities that are not lengths end in <c>-si</c> and carry their dimension.</summary>
internal static class ConformityReasons
{
    public static Reason NotRead(string subject) => new("not-read", Arguments(("subject", subject)), subject);

    /// <summary>Fewer readings than make a measurement.</summary>
    public static Assessment TooFew(string subject, int read, int needed) => new(
        Outcome.NotAssessed,
        null,
        null,
        [new Reason("too-few-readings", Arguments(("subject", subject), ("read", Whole(read)), ("needed", Whole(needed))), subject)],
        [new Change("more-readings", subject, new Real(needed - read, Dimension.Count), Outcome.NotAssessed)]);

    public static Reason OfPoint(string subject, Outcome outcome, double point, Window window, Scale scale, Policy policy)
    {
        var nearLow = window.Low is { } low && (window.High is not { } high || point - low <= high - point);
        var code = outcome switch
        {
            Outcome.Conforming => "within-limits",
            Outcome.Nonconforming when !window.Contains(point) => nearLow ? "below-low-limit" : "above-high-limit",
            _ => nearLow ? "too-near-low-limit" : "too-near-high-limit",
        };
        return Reason(
            code,
            subject,
            scale,
            ("value", point),
            ("limit", nearLow ? window.Low!.Value : window.High!.Value),
            ("uncertainty", window.Uncertainty),
            ("chancePercent", Percent(window.ChanceWithin(point))),
            ("neededPercent", Percent(policy.Probability)));
    }

    /// <summary>The smallest and the largest reading and what lies between them, which one number would hide; nothing when an end is only a bound.</summary>
    public static IEnumerable<Reason> OfSpread(string subject, Estimate one, Estimate other, Scale scale)
    {
        if (scale.Of(one.Value) is { } a && scale.Of(other.Value) is { } b)
            yield return Reason("read-between", subject, scale, ("smallest", Math.Min(a, b)), ("largest", Math.Max(a, b)), ("spread", Math.Abs(a - b)));
    }

    public static Reason FoundByTrials(string subject, int trials) =>
        new("found-by-monte-carlo", Arguments(("subject", subject), ("trials", Whole(trials))), subject);

    public static Reason OfBounds(string subject, Outcome outcome, double? low, double? high, Window window, Scale scale)
    {
        var (code, bound, limit) = outcome switch
        {
            Outcome.Nonconforming when high < window.Low => ("bound-below-low-limit", high, window.Low),
            Outcome.Nonconforming => ("bound-above-high-limit", low, window.High),
            Outcome.Conforming => ("bound-within-limits", high ?? low, high is null ? window.Low : window.High),
            _ => ("bound-leaves-open", high ?? low, window.Low ?? window.High),
        };
        return Reason(code, subject, scale, ("bound", bound!.Value), ("limit", limit!.Value));
    }

    private static string Whole(int count) => count.ToString(CultureInfo.InvariantCulture);

    /// <summary>A share as per cent, to two decimals.</summary>
    public static double Percent(double probability) => Math.Round(100 * probability, 2);

    /// <summary>A reason about values on a scale; an argument whose name ends in Percent is no quantity.</summary>
    public static Reason Reason(string code, string subject, Scale scale, params (string Name, double Value)[] values)
    {
        var isLength = scale.Dimension == Dimension.Length;
        var arguments = values.Select(v => v.Name.EndsWith("Percent", StringComparison.Ordinal)
            ? (v.Name, v.Value.ToString("G10", CultureInfo.InvariantCulture))
            : isLength
                ? (v.Name + "Nm", Math.Round(v.Value).ToString("F0", CultureInfo.InvariantCulture))
                : (v.Name + "Si", v.Value.ToString("G10", CultureInfo.InvariantCulture)));
        var dimension = isLength ? [] : new[] { ("dimension", scale.Dimension.ToString()) };
        return new Reason(isLength ? code : code + "-si", Arguments([("subject", subject), .. arguments, .. dimension]), subject);
    }

    private static ImmutableSortedDictionary<string, string> Arguments(params (string Name, string Value)[] values) =>
        values.ToImmutableSortedDictionary(v => v.Name, v => v.Value, StringComparer.Ordinal);
}
