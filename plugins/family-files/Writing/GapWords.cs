namespace FamilyFiles.Writing;

/// <summary>Writes a sum of dimensions as it is read: <c>mainshaft/third-seat - hub-3-4/width - piece of snap-ring-3-4</c>.</summary>
internal static class GapWords
{
    public static string Of(ImmutableArray<Term> terms, Figures figures) => string.Join(' ', terms.Select((t, i) => Sign(t, i) + Share(t) + Member(t.Of, figures)));

    private static string Sign(Term term, int index) => term.Numerator < 0 ? "- " : index == 0 ? "" : "+ ";

    private static string Share(Term term) => (Math.Abs(term.Numerator), term.Denominator) switch
    {
        (1, 1) => "",
        (var n, 1) => string.Create(CultureInfo.InvariantCulture, $"{n} x "),
        var (n, d) => string.Create(CultureInfo.InvariantCulture, $"{n}/{d} x "),
    };

    private static string Member(Dim member, Figures figures) => member switch
    {
        OfPart part => part.At.ToString(),
        Fixed length => figures.Length(length.Value),
        OfSeries s => $"piece of {s.Series}{(s.Position == s.Series ? "" : $" at {s.Position}")}{(s.MaxPieces == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $" up to {s.MaxPieces}"))}",
        _ => throw new NotSupportedException($"A dimension of the kind {member.GetType().Name} can't be written."),
    };
}
