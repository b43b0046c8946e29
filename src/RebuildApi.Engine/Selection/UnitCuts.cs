using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Selection;

/// <summary>The cuts that a selection may use: permitted on this part, and with every clearance that they touch known.</summary>
/// <param name="Cuts">The cuts with their limits.</param>
/// <param name="Withheld">Why others may not be used.</param>
internal sealed record UnitCuts(ImmutableArray<(Cut Cut, CutLimit Limit)> Cuts, ImmutableArray<Reason> Withheld)
{
    public static UnitCuts None { get; } = new([], []);

    public static UnitCuts Of(UnitLoops loops, EstimateBook book)
    {
        var family = book.View.Family;
        var cuts = ImmutableArray.CreateBuilder<(Cut, CutLimit)>();
        var withheld = ImmutableArray.CreateBuilder<Reason>();
        foreach (var cut in Cut.Of(family).Where(c => book.View.FirstAt(c.Position) is not null && loops.Loops.Any(l => c.Touches(l.Loop, family))))
        {
            var limit = CutLimit.Of(cut, book);
            if (limit.MostSteps is not { } most || most < Math.Max(1, limit.FewestSteps))
                withheld.Add(limit.Because);
            else if (Touched(cut, book).FirstOrDefault(l => UnitLoop.Of(l, book).Gap is null) is { } unread)
                withheld.Add(Because.Of("selection-cut-touches-unread", cut.Id, ("operation", cut.Operation.Id), ("position", cut.Position), ("loop", unread.Id)));
            else
                cuts.Add((cut, limit));
        }

        return new UnitCuts(cuts.ToImmutable(), withheld.ToImmutable());
    }

    /// <summary>Every clearance that any of the cuts changes.</summary>
    public IEnumerable<ClearanceLoop> Touched(EstimateBook book) => Cuts.SelectMany(c => Touched(c.Cut, book)).Distinct();

    private static IEnumerable<ClearanceLoop> Touched(Cut cut, EstimateBook book) =>
        book.View.Family.Family.Loops.Where(l => cut.Touches(l, book.View.Family));
}
