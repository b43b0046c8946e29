using RebuildApi.Contracts;

namespace RebuildApi.Engine.Families;

/// <summary>
/// Every loop closes at nominal: with each part in the middle of its drawing limits, some piece of each series brings the gap into its window.
/// </summary>
internal static class ClosureCheck
{
    private const int MostPacks = 4096;
    private const int MostGaps = 4_000_000;

    public static void Run(Family family, FamilyReport report)
    {
        var names = new FamilyNames(family);
        foreach (var loop in family.Loops)
        {
            var field = $"loops[{loop.Id}]";
            var open = loop.Terms.Select(t => t.Of).OfType<OfPart>().FirstOrDefault(p => Nominal(names.NewAt(p.At)) is null);
            if (open is not null)
                report.Doubt(field, "loop-not-drawn", $"'{open.At}' has no drawing limits, so the loop can't be closed on paper.");
            else if (!Gaps(loop, family, names).Take(MostGaps).Any(g => IsInside(g, loop.Window)))
                report.Error(field, "loop-not-closed", "With every part at its drawing size no piece brings the gap into its window.");
        }
    }

    /// <summary>Every gap, in metres, that parts at nominal and the pieces that exist can make.</summary>
    private static IEnumerable<double> Gaps(ClearanceLoop loop, Family family, FamilyNames names) =>
        loop.Terms.Aggregate(Enumerable.Repeat(0.0, 1), (sums, term) =>
        {
            var sizes = Sizes(term.Of, family, names).ToArray();
            var factor = (double)term.Numerator / term.Denominator;
            return sums.SelectMany(sum => sizes.Select(size => sum + (factor * size)));
        });

    private static HashSet<double> Sizes(Dim member, Family family, FamilyNames names) => member switch
    {
        OfPart part => [Nominal(names.NewAt(part.At))!.Value],
        Fixed length => [length.Value.InMetres],
        OfSeries series => Packs(family.Series.First(s => s.Id == series.Series), series.MaxPieces),
        _ => [],
    };

    /// <summary>Thicknesses of all packs of one to so many pieces.</summary>
    private static HashSet<double> Packs(Series series, int pieces)
    {
        var singles = series.Members.Select(m => m.Thickness.InMetres).ToArray();
        var packs = singles.ToHashSet();
        for (var n = 1; n < pieces && packs.Count < MostPacks; n++)
            packs.UnionWith(packs.SelectMany(p => singles.Select(s => p + s)).ToArray());
        return packs;
    }

    private static double? Nominal(Limits? drawing) => drawing switch
    {
        { Target: { } target } => target.InSi,
        { Low: { } low, High: { } high } => (low.InSi + high.InSi) / 2,
        _ => null,
    };

    /// <summary>Half a nanometre of slack: the sums are doubles, the window is whole nanometres.</summary>
    private static bool IsInside(double gap, Limits window) =>
        (window.Low is null || gap >= window.Low.InSi - 0.5e-9) && (window.High is null || gap <= window.High.InSi + 0.5e-9);
}
