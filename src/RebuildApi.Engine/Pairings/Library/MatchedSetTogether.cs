using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Parts that stay together.</summary>
internal sealed class MatchedSetTogether : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "matched-set",
        "Matched set stays together",
        """
        Judges whether parts that belong together are still together. replace-together: all came in this unit, or all are exchanged.
        same-individuals: all are the very parts that were found here, or all are exchanged for parts supplied as one set.
        same-individuals-and-index: and their index marks are the same. The bond is that of the family's set which the option names, else the
        option bond.
        """,
        [MaybeRole("first", "a part of the set"), MaybeRole("second", "another")],
        [MaySee("*", "supplied", "how an exchanged part was supplied; needed for same individuals that are exchanged", "as-set", "single")],
        [],
        [],
        [
            Word("set", "id of the family's set; its positions are taken besides the roles"),
            Word("bond", "how strictly, when no set is named; same-individuals when not given", "replace-together", "same-individuals", "same-individuals-and-index"),
        ],
        TakesMoreRoles: true);

    public override Assessment Judge(PairingCase parts)
    {
        var places = PlacesOf(parts);
        return places.Length < 2 ? Assessment.Worst([]) : Togetherness.Judge(parts, places, BondOf(parts, SetOf(parts)));
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        var places = PlacesOf(parts);
        var supplied = places.Select(p => new CureStep(p.Position, "supplied", "as-set", null, null));
        var positions = string.Join(", ", places.Select(p => p.Position));
        yield return new Exchange("fit-all", $"Change all together: {positions}.", [.. places.Select(p => Pairings.Exchanges.Fit(p.Position))]);
        yield return new Exchange("fit-as-set", $"Change all for parts supplied as one set: {positions}.", [.. supplied]);
    }

    private static Place[] PlacesOf(PairingCase parts) =>
    [
        .. parts.Places.Values
            .Concat(SetOf(parts)?.Positions.Select(p => Place.Parse(p)) ?? [])
            .DistinctBy(p => (p.Position, p.Index)),
    ];

    private static MatchedSet? SetOf(PairingCase parts) => parts.Family.Family.Sets.FirstOrDefault(s => s.Id == parts.Option("set"));

    private static SetBond BondOf(PairingCase parts, MatchedSet? set) => set?.Bond ?? parts.Option("bond") switch
    {
        "replace-together" => SetBond.ReplaceTogether,
        "same-individuals-and-index" => SetBond.SameIndividualsAndIndex,
        _ => SetBond.SameIndividuals,
    };
}
