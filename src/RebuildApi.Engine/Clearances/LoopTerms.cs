using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Clearances;

/// <summary>The members of a clearance with what is known of each: parts and fixed lengths apart from the selective pieces.</summary>
/// <param name="Parts">Parts and fixed lengths.</param>
/// <param name="Pieces">The selective pieces with their terms.</param>
internal sealed record LoopTerms(ImmutableArray<TermValue> Parts, ImmutableArray<(Term Term, PlacedPieces Placed)> Pieces)
{
    /// <summary>Whether every selective piece is placed and known; true for a loop without any.</summary>
    public bool PiecesAreKnown => Pieces.All(p => p.Placed.AreKnown);

    /// <summary>The parts, and the pieces that are known and not open to choice.</summary>
    public ImmutableArray<TermValue> Known(Func<string, bool> isOpen) =>
        [.. Parts, .. Pieces.Where(p => p.Placed.AreKnown && !isOpen(p.Placed.Of.Position)).Select(p => ValueOf(p.Term, p.Placed))];

    /// <summary>Looks every member up.</summary>
    /// <exception cref="ArgumentException">The loop has no members, or names an absent characteristic or series, or has a bad coefficient.</exception>
    public static LoopTerms Of(ClearanceLoop loop, EstimateBook book)
    {
        RequireClosed(loop, book.View.Family);
        var parts = loop.Terms.Where(t => t.Of is not OfSeries).Select(t => ValueOf(t, book)).ToImmutableArray();
        var pieces = loop.Terms.Where(t => t.Of is OfSeries).Select(t => (t, PlacedPieces.At((OfSeries)t.Of, book))).ToImmutableArray();
        return new LoopTerms(parts, pieces);
    }

    private static TermValue ValueOf(Term term, EstimateBook book) => term.Of switch
    {
        Fixed length => TermValue.Of(term, "fixed", TermValue.Exactly(length.Value)),
        OfPart part => TermValue.Of(term, part.At.ToString(), book.Of(part.At)),
        _ => throw new ArgumentException($"A clearance has no members of type {term.Of.GetType().Name}.", nameof(term)),
    };

    private static TermValue ValueOf(Term term, PlacedPieces placed) => TermValue.Of(term, $"{placed.Of.Series} at {placed.Of.Position}", placed.Thickness);

    /// <summary>A loop closes only when its members open as well as close it, and all of them exist.</summary>
    private static void RequireClosed(ClearanceLoop loop, FamilyIndex family)
    {
        if (!loop.Terms.Any(t => t.Numerator > 0) || !loop.Terms.Any(t => t.Numerator < 0))
            throw new ArgumentException($"The loop {loop.Id} is open: it needs members that open the gap and members that close it.", nameof(loop));
        foreach (var term in loop.Terms)
        {
            if (term.Numerator == 0 || term.Denominator <= 0)
                throw new ArgumentException($"The loop {loop.Id} has a coefficient of {term.Numerator}/{term.Denominator}.", nameof(loop));
            if (term.Of is OfPart part && family.CharacteristicAt(part.At)?.Dimension != Dimension.Length)
                throw new ArgumentException($"The loop {loop.Id} names {part.At}, which is not a length of the family.", nameof(loop));
            if (term.Of is OfSeries of)
                RequirePieces(loop, of, family);
        }
    }

    private static void RequirePieces(ClearanceLoop loop, OfSeries of, FamilyIndex family)
    {
        if (PlacedPieces.SeriesOf(of, family).Members.IsEmpty)
            throw new ArgumentException($"The series {of.Series} of the loop {loop.Id} has no members.", nameof(loop));
        if (of.MaxPieces < 1)
            throw new ArgumentException($"The loop {loop.Id} allows {of.MaxPieces} pieces of {of.Series}.", nameof(loop));
    }
}
