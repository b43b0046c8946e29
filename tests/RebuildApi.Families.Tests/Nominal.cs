using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>A clearance on paper: every part in the middle of its drawing limits, or at the end that opens or closes it.</summary>
internal static class Nominal
{
    /// <summary>The gap with the middle piece of each series; where a pack may be built, the gap with each pack.</summary>
    public static IEnumerable<Length> GapsOf(ClearanceLoop loop, FamilyIndex family) =>
        loop.Terms.Any(t => t.Of is OfSeries { MaxPieces: > 1 })
            ? Thicknesses(loop, family).Select(pack => GapOf(loop, family, pack))
            : [GapOf(loop, family, null)];

    /// <summary>The gap with a given pack, or with the middle piece of each series.</summary>
    public static Length GapOf(ClearanceLoop loop, FamilyIndex family, Length? pack) => Sum(loop, t => t.Of switch
    {
        OfPart part => Middle(family.NewLimitsAt(part.At)!),
        OfSeries s => pack ?? family.Series[s.Series].Members[family.Series[s.Series].Members.Length / 2].Thickness,
        Fixed f => f.Value,
        _ => throw new InvalidOperationException(),
    });

    /// <summary>A loop that a piece is chosen for: only in it, or first in it, not one that merely feels the piece.</summary>
    public static bool IsForEndPlay(ClearanceLoop loop) => !loop.Id.EndsWith("-engagement", StringComparison.Ordinal);

    /// <summary>Whether, with all parts at the worst end of the drawing either way, some piece still lands in the window.</summary>
    public static bool IsCovered(ClearanceLoop loop, FamilyIndex family) => new[] { 1, -1 }.All(way =>
        Thicknesses(loop, family).Any(thickness => loop.Window.Contains(Sum(loop, t => t.Of switch
        {
            OfPart part => (Math.Sign(t.Numerator) * way) > 0 ? High(family.NewLimitsAt(part.At)!) : Low(family.NewLimitsAt(part.At)!),
            OfSeries => thickness,
            Fixed f => f.Value,
            _ => throw new InvalidOperationException(),
        }))));

    private static HashSet<Length> Thicknesses(ClearanceLoop loop, FamilyIndex family)
    {
        var series = loop.Terms.Select(t => t.Of).OfType<OfSeries>().Single();
        var singles = family.Series[series.Series].Members.Select(m => m.Thickness).ToArray();
        var packs = singles.ToHashSet();
        for (var n = 1; n < series.MaxPieces; n++)
            packs.UnionWith(packs.SelectMany(p => singles.Select(s => p + s)).ToArray());
        return packs;
    }

    private static Length Sum(ClearanceLoop loop, Func<Term, Length> size) =>
        loop.Terms.Aggregate(Length.Zero, (sum, t) => sum + new Length(t.Numerator * size(t).Nanometres / t.Denominator));

    private static Length Middle(Limits drawing) => new((Low(drawing).Nanometres + High(drawing).Nanometres) / 2);

    private static Length Low(Limits drawing) => ((Exact)drawing.Low!).Value;

    private static Length High(Limits drawing) => ((Exact)drawing.High!).Value;
}
