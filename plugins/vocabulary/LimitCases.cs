namespace FamilyWords;

/// <summary>
/// Worked cases for every limit to go back into service, by construction: each part once with every reading inside its limits, once with every reading
/// below and once with every reading above. What must come out follows from the declared ends by arithmetic alone.
/// </summary>
internal static class LimitCases
{
    public static IEnumerable<GoldenCase> Of(Family family, Length step) =>
        family.Positions.Select(p => (Position: p, Limits: LimitsProvenAt(family, p))).Where(x => x.Limits.Length > 0).SelectMany(x => At(family, x.Position, x.Limits, step));

    private static IEnumerable<GoldenCase> At(Family family, Position position, ImmutableArray<(string At, Limits Limits)> limits, Length step)
    {
        (string Words, string Outcome, Func<Limits, Length, Quantity?> Value)[] sides =
        [
            ("every reading inside its limits", "conforming", CaseValues.Inside),
            ("every reading below its limits", "nonconforming", CaseValues.Below),
            ("every reading above its limits", "nonconforming", CaseValues.Above),
        ];
        foreach (var (words, outcome, value) in sides)
        {
            var read = limits.Select(l => (l.At, Value: value(l.Limits, step))).Where(r => r.Value is not null).ToList();
            var draft = read.Aggregate(new CaseDraft(family, $"{position.Name.In("en")}, {words}"), (d, r) => d.Reads(r.At, r.Value!));
            if (read.Count > 0)
                yield return draft.Expects(read.Select(r => (r.At, outcome)));
        }
    }

    /// <summary>A limit of a kind is proven once, where a part of that kind first sits by the kind's own limit; a position's own limit where it is declared.</summary>
    private static ImmutableArray<(string At, Limits Limits)> LimitsProvenAt(Family family, Position position) =>
    [
        .. from c in CaseValues.KindAt(family, position.Id).Characteristics
           let own = Own(position, c)
           let limits = own ?? (IsFirst(family, position, c) ? c.Service : null)
           where limits is not null
           select ($"{position.Id}/{c.Id}", limits),
    ];

    private static bool IsFirst(Family family, Position position, Characteristic c) =>
        family.Positions.First(p => p.Kind == position.Kind && Own(p, c) is null).Id == position.Id;

    private static Limits? Own(Position position, Characteristic c) => position.Overrides.FirstOrDefault(o => o.Characteristic == c.Id)?.Service;
}
