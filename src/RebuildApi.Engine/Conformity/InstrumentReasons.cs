using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;

namespace RebuildApi.Engine.Conformity;

/// <summary>What a verdict has to say of the instruments behind it.</summary>
internal static class InstrumentReasons
{
    /// <summary>The assessment with notes on overdue instruments, on readings outside a range or from a time in doubt, and, where it is open, on steps too coarse for the window.</summary>
    public static Assessment Noted(Assessment assessment, string subject, ReadingSet readings, Limits limits, Policy policy)
    {
        var reasons = assessment.Reasons;
        if (readings.Overdue > 0)
            reasons = reasons.Add(Overdue(subject, readings, policy));
        if (readings.OutsideRange > 0)
            reasons = reasons.Add(Counted("reading-outside-range", subject, readings.OutsideRange));
        if (readings.InDoubt > 0)
            reasons = reasons.Add(Counted("instrument-found-wrong", subject, readings.InDoubt));
        if (assessment.Outcome == Outcome.Inconclusive && CoarseStep(subject, readings, limits) is { } coarse)
            reasons = reasons.Add(coarse);
        return assessment with { Reasons = reasons };
    }

    private static Reason Overdue(string subject, ReadingSet readings, Policy policy) =>
        Counted(policy.Overdue == OverdueRule.Block ? "instrument-overdue-blocked" : "instrument-overdue", subject, readings.Overdue);

    private static Reason Counted(string code, string subject, int readings) =>
        new(code, Arguments(("subject", subject), ("readings", readings.ToString(CultureInfo.InvariantCulture))), subject);

    /// <summary>An instrument's step should be at most a tenth of the window (common practice, no source).</summary>
    private static Reason? CoarseStep(string subject, ReadingSet readings, Limits limits)
    {
        const double ShareOfWindow = 0.1;
        var width = readings.Scale.Of(limits.High) - readings.Scale.Of(limits.Low);
        var coarsest = readings.Values.MaxBy(v => v.Step);
        if (readings.Scale.Dimension != Dimension.Length || coarsest is null || !(coarsest.Step > ShareOfWindow * width))
            return null;
        return new Reason(
            "step-coarse-for-window",
            Arguments(("subject", subject), ("stepNm", Whole(coarsest.Step)), ("windowNm", Whole(width!.Value))),
            subject);
    }

    private static string Whole(double nanometres) => Math.Round(nanometres).ToString("F0", CultureInfo.InvariantCulture);

    private static ImmutableSortedDictionary<string, string> Arguments(params (string Name, string Value)[] values) =>
        values.ToImmutableSortedDictionary(v => v.Name, v => v.Value, StringComparer.Ordinal);
}
