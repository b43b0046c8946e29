namespace FamilyWords;

/// <summary>
/// Worked cases for every clearance, by construction: all dimensions of its loop in the middle of their drawings, but for one that is read so that the sum of the
/// signed terms comes to the middle of the window, below it, or above it.
/// </summary>
internal static class ClearanceCases
{
    public static IEnumerable<GoldenCase> Of(Family family, Length step) => family.Loops.SelectMany(loop => Of(family, loop, step));

    private static IEnumerable<GoldenCase> Of(Family family, ClearanceLoop loop, Length step)
    {
        var name = loop.Name.In("en");
        yield return Reaching(CaseValues.Inside(loop.Window, step), "in its window").Expects((loop.Id, "conforming"));
        if (CaseValues.Below(loop.Window, step) is { } below)
            yield return Reaching(below, "below its window").Expects((loop.Id, "nonconforming"));
        if (CaseValues.Above(loop.Window, step) is { } above)
            yield return Reaching(above, "above its window").Expects((loop.Id, "nonconforming"));

        CaseDraft Reaching(Quantity gap, string words)
        {
            var nominal = loop.Terms.Where(t => t.Of is not Fixed).Select(t => (Term: t, At: AddressOf(t))).ToList();
            var draft = nominal.Aggregate(new CaseDraft(family, $"{name}, {words}"), (d, t) => d.Reads(t.At, new Exact(Nominal(family, t.Term, step))));
            var free = loop.Terms.First(t => t is { Of: OfPart, Denominator: 1, Numerator: 1 or -1 });
            var missing = ((Exact)gap).Value - Gap(family, loop, step);
            return draft.Reads(AddressOf(free), new Exact(Nominal(family, free, step) + new Length(free.Numerator * missing.Nanometres)));
        }
    }

    /// <summary>Σ coefficient × dimension, with one piece of each series for each place that must be filled.</summary>
    private static Length Gap(Family family, ClearanceLoop loop, Length step) => loop.Terms.Aggregate(
        Length.Zero, (sum, t) => sum + new Length(t.Numerator * Pieces(family, t) * Nominal(family, t, step).Nanometres / t.Denominator));

    private static int Pieces(Family family, Term term) =>
        term.Of is OfSeries { MaxPieces: > 1 } s && family.Positions.Single(p => p.Id == s.Position) is var at ? at.Fewest ?? at.Quantity : 1;

    private static Length Nominal(Family family, Term term, Length step) => term.Of switch
    {
        OfPart part => ((Exact)CaseValues.Nominal(family, part.At.ToString(), step)).Value,
        OfSeries s when family.Series.Single(x => x.Id == s.Series).Members is var members => members[members.Length / 2].Thickness,
        Fixed f => f.Value,
        _ => throw new InvalidOperationException(),
    };

    private static string AddressOf(Term term) => term.Of is OfPart part ? part.At.ToString() : ((OfSeries)term.Of).Position + "/thickness";
}
