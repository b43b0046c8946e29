using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Selection;

/// <summary>The clearances of a unit that a selection takes in, each with its gap before any piece, and those it has to leave out.</summary>
/// <param name="Loops">Those that are known.</param>
/// <param name="LeftOut">Those that are not, with why.</param>
internal sealed record UnitLoops(ImmutableArray<UnitLoop> Loops, ImmutableArray<LoopLeftOut> LeftOut)
{
    /// <summary>The loops asked for and those that share a piece with them.</summary>
    /// <exception cref="ArgumentException">The request names a loop that the family does not have.</exception>
    public static UnitLoops Of(EstimateBook book, SelectionRequest request)
    {
        var family = book.View.Family;
        if (request.Loops.FirstOrDefault(l => !family.Loops.ContainsKey(l)) is { } strange)
            throw new ArgumentException($"loops: there is no clearance {strange}.", nameof(request));
        var asked = request.Loops.IsEmpty ? family.Family.Loops.Select(l => l.Id) : request.Loops;
        return Sort(Coupled(asked.ToHashSet(StringComparer.Ordinal), family.Family.Loops), book);
    }

    /// <summary>These loops and more, with those that share a piece with the new ones.</summary>
    public UnitLoops With(IEnumerable<ClearanceLoop> more, EstimateBook book)
    {
        var ids = Loops.Select(l => l.Loop.Id).Concat(LeftOut.Select(l => l.Loop)).Concat(more.Select(l => l.Id)).ToHashSet(StringComparer.Ordinal);
        var all = Sort(Coupled(ids, book.View.Family.Family.Loops), book);
        var plain = book.View.Family.Family.Loops.Where(l => ids.Contains(l.Id) && !l.Terms.Any(t => t.Of is OfSeries)).Select(l => UnitLoop.Of(l, book));
        return all with { Loops = [.. all.Loops, .. plain.Where(l => l.Gap is not null)] };
    }

    private static UnitLoops Sort(IEnumerable<ClearanceLoop> loops, EstimateBook book)
    {
        var all = loops.Select(l => UnitLoop.Of(l, book)).ToImmutableArray();
        return new UnitLoops(
            [.. all.Where(l => l.Gap is not null)],
            [.. all.Where(l => l.Gap is null).Select(l => new LoopLeftOut(l.Loop.Id, l.WhyNot()))]);
    }

    private static IEnumerable<ClearanceLoop> Coupled(HashSet<string> ids, ImmutableArray<ClearanceLoop> all)
    {
        var withPieces = all.Where(l => l.Terms.Any(t => t.Of is OfSeries)).ToImmutableArray();
        int before;
        do
        {
            before = ids.Count;
            var positions = withPieces.Where(l => ids.Contains(l.Id)).SelectMany(UnitLoop.PositionsOf).ToHashSet(StringComparer.Ordinal);
            ids.UnionWith(withPieces.Where(l => UnitLoop.PositionsOf(l).Any(positions.Contains)).Select(l => l.Id));
        }
        while (ids.Count > before);
        return withPieces.Where(l => ids.Contains(l.Id));
    }
}

/// <summary>One clearance with what is known of it before any piece is chosen.</summary>
/// <param name="Loop">The clearance.</param>
/// <param name="State">What is known without pieces.</param>
internal sealed record UnitLoop(ClearanceLoop Loop, LoopState State)
{
    /// <summary>The gap without pieces; none when it is not known, only bounded, or contradicted.</summary>
    public Length? Gap => State.Alarm is null ? (State.Combined.Value as Exact)?.Value : null;

    public static UnitLoop Of(ClearanceLoop loop, EstimateBook book) => new(loop, LoopState.Of(loop, LoopTerms.Of(loop, book), book, _ => true));

    public static IEnumerable<string> PositionsOf(ClearanceLoop loop) => loop.Terms.Select(t => t.Of).OfType<OfSeries>().Select(s => s.Position);

    public ImmutableArray<Reason> WhyNot()
    {
        if (State.Alarm is { } alarm)
            return [Because.Of("mix-up", Loop.Id, ("residualNm", alarm.Residual))];
        if (State.Combined.Basis != EstimateBasis.None)
            return [Because.Of("selection-gap-only-bounded", Loop.Id)];
        return [.. State.Parts.Terms.Where(t => t.IsUnknown).Select(t => Because.Of("loop-member-not-read", Loop.Id, ("at", t.Name)))];
    }
}
