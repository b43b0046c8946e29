namespace FamilyWords;

/// <summary>
/// Worked cases for every pairing, by construction: once with parts as a healthy gearbox has them, once with the one thing changed that a rebuilder knows to break it.
/// What then must come out is what the rule declares for a broken one (common practice of the trade, no source).
/// </summary>
internal sealed class PairingCases(Family family, IReadOnlyDictionary<string, string> sound, Length step)
{
    public IEnumerable<GoldenCase> All => family.Pairings.Where(r => Looks.ContainsKey(r.Template)).SelectMany(Of);

    /// <summary>What each template looks at: attributes seen, then characteristics read, each as role/name.</summary>
    private static readonly ImmutableDictionary<string, (string[] Seen, string[] Read)> Looks = new Dictionary<string, (string[], string[])>
    {
        ["engagement-form"] = (["gear/form", "gear/drive-flank", "gear/coast-flank", "gear/stop", "sleeve/form"], ["gear/drive-flank-angle", "gear/coast-flank-angle", "sleeve/drive-flank-angle"]),
        ["spline-match"] = (["outer/teeth", "inner/teeth"], []),
        ["travel-stop"] = (["sleeve/form", "stop/stop"], []),
        ["matched-set"] = ([], []),
        ["ring-to-cone"] = (["ring/grip"], ["ring/reserve-gap"]),
        ["ring-slot-to-key"] = (["hub/key-slot"], ["ring/slot-width", "key/width", "hub/slot-width"]),
        ["lining-against-oil"] = (["ring/lining", "oil/additive", "oil/grade"], []),
        ["attributes-equal"] = ([], []),
        ["attributes-allowed"] = ([], []),
        ["fork-to-groove"] = (["fork/input-pad", "fork/output-pad"], []),
        ["mesh-pair"] = ([], []),
        ["centre-distance"] = ([], []),
        ["snap-ring-to-groove"] = (["ring/surface"], []),
        ["washer-material-facing"] = (["washer/material"], []),
        ["thrust-direction"] = (["first/hand", "second/hand"], []),
        ["ratio-set"] = (["*/ratio-set"], []),
        ["vintage-match"] = (["*/vintage"], []),
        ["bearing-thrust"] = (["bearing/type", "mate/type"], []),
        ["bearing-envelope"] = (["bearing/clearance-group"], []),
        ["key-length-to-hub"] = (["key/notch"], ["key/length"]),
        ["characteristics-difference"] = ([], []),
    }.ToImmutableDictionary(StringComparer.Ordinal);

    private IEnumerable<GoldenCase> Of(PairingRule rule)
    {
        var healthy = Healthy(rule);
        yield return (healthy with { Name = rule.Name.In("en") + ", as it should be" }).Expects((rule.Id, "compatible"));
        var (broken, outcome) = new PairingBreaks(family, rule, Value).Of(healthy with { Name = rule.Name.In("en") + ", as it must not be" });
        yield return broken.Expects((rule.Id, outcome));
    }

    private CaseDraft Healthy(PairingRule rule)
    {
        var places = new RulePlaces(family, rule);
        var (seen, read) = Looks[rule.Template];
        var draft = new CaseDraft(family, "").Places(places.Positions);
        draft = places.Named([.. seen, .. places.NamedByOptions]).Where(places.IsSeen).Aggregate(draft, (d, at) => d.Shows(at, Value(rule, at)));
        draft = places.Named([.. read, .. places.ReadByOptions]).Where(places.IsRead).Aggregate(draft, (d, at) => d.Reads(at, CaseValues.Nominal(family, at, step)));
        draft = rule.Template == "matched-set" ? draft.Marks(places.Positions) : draft;
        return rule.Options.TryGetValue("facing", out var facing) ? draft.Faces(places.Positions[0], facing == "output" ? Facing.Output : Facing.Input) : draft;
    }

    /// <summary>What a healthy gearbox shows: the rule's own word where it names one, else the family's.</summary>
    private string Value(PairingRule rule, string at)
    {
        var id = at.Split('/', 2)[1];
        return rule.Template == "key-length-to-hub" && rule.Options.TryGetValue("notch", out var notch) ? notch
            : sound.TryGetValue(id, out var value) ? value
            : sound[id[(id.LastIndexOf('.') + 1)..]];
    }
}
