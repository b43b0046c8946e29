using RebuildApi.Engine.Pieces;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>Selective pieces that bring a clearance right at nominal.</summary>
internal static class Pieces
{
    /// <summary>The thicknesses to fit at a position, one for each piece; empty where nothing selective sits.</summary>
    public static ImmutableArray<Length> At(Position position, FamilyIndex family)
    {
        var (loop, term) = family.Family.Loops
            .SelectMany(l => l.Terms.Select(t => (Loop: l, Of: t.Of as OfSeries)))
            .FirstOrDefault(x => x.Of?.Position == position.Id);
        if (term is null)
            return [];
        var members = family.Series[term.Series].Members.Select(m => m.Thickness).ToImmutableArray();
        return term.MaxPieces == 1 ? [members[members.Length / 2]] : Pack(loop, members, family);
    }

    private static ImmutableArray<Length> Pack(ClearanceLoop loop, ImmutableArray<Length> members, FamilyIndex family)
    {
        var wanted = ((Exact)loop.Window.Target!).Value;
        return (from a in members
                from b in members
                from c in members
                orderby Math.Abs((Nominal.GapOf(loop, family, a + b + c) - wanted).Nanometres)
                select ImmutableArray.Create(a, b, c)).First();
    }
}
