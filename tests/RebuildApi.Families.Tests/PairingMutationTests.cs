using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>Every number of a pairing and of the gear train decides something: change it, and what is said of a named pairing changes.</summary>
public class PairingMutationTests
{
    private static readonly Bench s_sound = Healthy.Brackenmere;
    private static readonly string[] s_gears = ["input-gear", "third-gear", "second-gear", "first-gear"];
    private static readonly string[] s_sleeves = ["sleeve-3-4", "sleeve-1-2"];
    private static readonly FamilyIndex s_index = new(s_sound.Family);

    /// <summary>Units that between them come near every number: all sound; back-tapered throughout with tapers half a degree apart; rings with wide slots.</summary>
    private static readonly Bench[] s_probes = [s_sound, BackTapered(), WideSlots()];

    [Fact]
    public void Every_parameter_of_every_pairing_counts()
    {
        var changed =
            from r in s_sound.Family.Pairings
            from p in r.Parameters
            select (Rule: r, Parameter: p.Key, Changed: r with { Parameters = r.Parameters.ToImmutableSortedDictionary().SetItem(p.Key, Moved(r, p.Key, p.Value)) });

        var survivors = changed.Where(c => s_probes.All(b => Said(b, c.Rule) == Said(b, c.Changed)));

        Assert.Empty(survivors.Select(c => $"{c.Rule.Id} {c.Parameter}"));
    }

    [Fact]
    public void Every_number_of_every_row_of_teeth_counts()
    {
        var changed =
            from k in s_sound.Family.Kinds
            from t in k.ToothSets
            from c in Changed(t)
            select (Kind: k.Id, Row: t.Id, What: c.What, Family: s_sound.Family with { Kinds = [.. s_sound.Family.Kinds.Select(x => x.Id == k.Id ? x with { ToothSets = x.ToothSets.Replace(t, c.Teeth) } : x)] });

        var now = AllSaid(s_sound.Family);
        var survivors = changed.Where(c => AllSaid(c.Family) == now);

        Assert.Empty(survivors.Select(c => $"{c.Kind}/{c.Row} {c.What}"));
    }

    private static IEnumerable<(string What, ToothSet Teeth)> Changed(ToothSet t) =>
    [
        ("teeth", t with { Teeth = t.Teeth + 1 }),
        ("module", t with { NormalModule = t.NormalModule + Length.Micrometres(10) }),
        ("helix", t with { HelixAngle = t.HelixAngle + 0.01 }),
        ("pressure angle", t with { NormalPressureAngle = t.NormalPressureAngle + 0.01 }),
        ("profile shift", t with { ProfileShift = t.ProfileShift + 0.1 }),
    ];

    /// <summary>A low limit goes up to the high one and a high one down to the low one; any other number goes up by half, or down to next to nothing.</summary>
    private static Quantity Moved(PairingRule rule, string name, Quantity value)
    {
        if (name.EndsWith("low", StringComparison.Ordinal))
            return rule.Parameters[name[..^3] + "high"];
        if (name.EndsWith("high", StringComparison.Ordinal))
            return rule.Parameters[name[..^4] + "low"];
        if (name is "share-watch" or "angle-tolerance")
            return new Real(1e-3, value.Kind);
        return value is Exact e ? new Exact(new Length(e.Value.Nanometres * 3 / 2)) : new Real(value.InSi * 1.5, value.Kind);
    }

    private static string AllSaid(Family family)
    {
        var book = new EstimateBook(new UnitView(s_sound.Snapshot, new FamilyIndex(family)));
        return string.Join("\n", family.Pairings.Where(r => r.Template is "mesh-pair" or "centre-distance" or "thrust-direction").Select(r => Words(PairingJudge.Judge(r, book))));
    }

    private static string Said(Bench bench, PairingRule rule) =>
        Words(PairingJudge.Judge(rule, new EstimateBook(new UnitView(bench.Snapshot, s_index))));

    private static string Words(PairingVerdict v) =>
        $"{v.Rule} {v.Outcome} " + string.Join("; ", v.Reasons.Select(r => r.Code + " " + string.Join(",", r.Arguments.OrderBy(a => a.Key, StringComparer.Ordinal).Select(a => a.Key + "=" + a.Value))));

    private static Bench BackTapered() => s_gears.Aggregate(
        s_sleeves.Aggregate(s_sound, (b, s) => b.Shows(s, "form", "back-tapered").ReadsDegrees(s + "/drive-flank-angle", 3.5, 3.5, 3.5)),
        (b, g) => b.Shows(g, "dog.form", "back-tapered").ReadsDegrees(g + "/dog.drive-flank-angle", 3.0, 3.0, 3.0));

    private static Bench WideSlots() => Enumerable.Range(1, 4).Aggregate(s_sound, (b, i) => b.ReadsInches($"blocker-ring-{i}/slot-width", 0.3900m, 0.3900m, 0.3900m));
}
