using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pieces;

namespace RebuildApi.Engine.Selection;

/// <summary>Whether a series always has a piece that brings a clearance surely into its window, wherever in its range the gap lies.</summary>
/// <param name="IsGuaranteed">Whether no gap between the two ends is without an answer.</param>
/// <param name="GuardedWidth">Width of the window after the guard on both sides; negative when nothing can be sure.</param>
/// <param name="WidestStep">The widest step between neighbouring packs; zero for a single one.</param>
/// <param name="From">The smallest gap without a piece that the thinnest pack answers.</param>
/// <param name="To">The largest gap without a piece that the thickest pack answers.</param>
/// <param name="Holes">Gaps between that have no answer, ends not included.</param>
public sealed record SeriesGuarantee(
    bool IsGuaranteed, Length GuardedWidth, Length WidestStep, Length From, Length To, ImmutableArray<(Length After, Length Before)> Holes)
{
    /// <summary>
    /// A step s always offers an answer only if s ≤ w − 2U, w being the window and U the guard on each side: the pieces then overlap in what they
    /// answer. Real series are taken as they are, piece by piece.
    /// </summary>
    /// <param name="packs">The packs that exist; at least one.</param>
    /// <param name="window">The guarded window, both ends there.</param>
    /// <exception cref="ArgumentException">No packs, or a window that is open on one side.</exception>
    public static SeriesGuarantee Of(ImmutableArray<Pack> packs, GuardedWindow window)
    {
        if (packs.IsDefaultOrEmpty)
            throw new ArgumentException("The series has no members.", nameof(packs));
        if (window is not { Low: { } low, High: { } high })
            throw new ArgumentException("A window that is open on one side needs no series to be guaranteed.", nameof(window));
        var thicknesses = packs.Select(p => p.Thickness).Order().ToImmutableArray();
        var neighbours = thicknesses.Zip(thicknesses.Skip(1)).ToImmutableArray();
        var holes = neighbours.Where(n => n.First + high < n.Second + low).Select(n => (n.First + high, n.Second + low)).ToImmutableArray();
        return new SeriesGuarantee(
            holes.IsEmpty && high >= low,
            high - low,
            neighbours.Select(n => n.Second - n.First).DefaultIfEmpty().Max(),
            thicknesses[0] + low,
            thicknesses[^1] + high,
            holes);
    }
}
