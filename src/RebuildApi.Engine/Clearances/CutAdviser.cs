using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Clearances;

/// <summary>Finds what may be machined when no piece of a series can bring a clearance right.</summary>
internal static class CutAdviser
{
    /// <summary>Every cut of the family that moves the gap the right way, those that may be made first, then the smallest.</summary>
    /// <param name="loop">The clearance.</param>
    /// <param name="miss">How much is missing.</param>
    /// <param name="book">The unit.</param>
    /// <param name="gapOf">The gap of another clearance as it stands, or none.</param>
    public static ImmutableArray<CutAdvice> For(ClearanceLoop loop, RingMiss miss, EstimateBook book, Func<ClearanceLoop, Length?> gapOf) =>
    [
        .. Cut.Of(book.View.Family)
            .Where(c => book.View.FirstAt(c.Position) is not null && Helps(c, loop, miss, book))
            .Select(c => Advise(c, loop, miss, book, gapOf))
            .OrderBy(a => a.Permission switch { CutPermission.Permitted => 0, CutPermission.ToEnterOnly => 1, CutPermission.NotAssessed => 2, _ => 3 })
            .ThenBy(a => a.ToTarget).ThenBy(a => a.Operation, StringComparer.Ordinal),
    ];

    private static bool Helps(Cut cut, ClearanceLoop loop, RingMiss miss, EstimateBook book) =>
        Math.Sign(cut.ChangeOf(loop, 1000, book.View.Family).Nanometres) == Math.Sign(miss.ToEnter.Nanometres);

    private static CutAdvice Advise(Cut cut, ClearanceLoop loop, RingMiss miss, EstimateBook book, Func<ClearanceLoop, Length?> gapOf)
    {
        var limit = CutLimit.Of(cut, book);
        var enter = Math.Max(limit.FewestSteps, StepsFor(cut, loop, miss.ToEnter, book));
        var target = Math.Max(limit.FewestSteps, StepsFor(cut, loop, miss.ToTarget, book));
        var step = cut.Main.Step;
        return new CutAdvice(
            cut.Operation.Id,
            new Address(cut.Position, cut.Main.At.Characteristic),
            cut.Main.Datum,
            enter * step,
            target * step,
            miss.IsLowerBound,
            limit.MostSteps is { } most ? most * step : null,
            PermissionOf(limit, enter, target),
            Touched(cut, target, book, gapOf),
            cut.Operation.RemeasureGate,
            cut.Operation.Cautions,
            [Because.Of(miss.IsLowerBound ? "cut-at-least" : "cut-by", loop.Id, ("toEnterNm", enter * step), ("toTargetNm", target * step)), limit.Because]);
    }

    /// <summary>The fewest whole steps that change the gap by at least what is missing.</summary>
    private static int StepsFor(Cut cut, ClearanceLoop loop, Length missing, EstimateBook book)
    {
        const int sample = 1000;
        var perSample = (decimal)cut.ChangeOf(loop, sample, book.View.Family).Nanometres;
        return (int)Math.Min(int.MaxValue, decimal.Ceiling(Math.Abs(missing.Nanometres * sample / perSample)));
    }

    private static CutPermission PermissionOf(CutLimit limit, int enter, int target) => limit.MostSteps switch
    {
        null => CutPermission.NotAssessed,
        { } most when target <= most => CutPermission.Permitted,
        { } most when enter <= most => CutPermission.ToEnterOnly,
        _ => CutPermission.Refused,
    };

    private static ImmutableArray<LoopTouched> Touched(Cut cut, int steps, EstimateBook book, Func<ClearanceLoop, Length?> gapOf) =>
    [
        .. from loop in book.View.Family.Family.Loops
           where cut.Touches(loop, book.View.Family)
           select Touched(loop, cut.ChangeOf(loop, steps, book.View.Family), gapOf(loop), book.View.Snapshot.Policy),
    ];

    private static LoopTouched Touched(ClearanceLoop loop, Length change, Length? now, Policy policy)
    {
        var after = now + change;
        var outcome = after is not { } gap ? Outcome.NotAssessed : WindowOf.Loop(loop, policy).Contains(gap) ? Outcome.Conforming : Outcome.Nonconforming;
        return new LoopTouched(loop.Id, change, now, after, outcome);
    }
}
