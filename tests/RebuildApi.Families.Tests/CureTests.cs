using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>Cures of the families as they ship: what is called sufficient is tried, and the cheapest comes first.</summary>
public class CureTests
{
    private static readonly FamilyIndex[] s_indexes = [.. Shipped.All.Select(f => new FamilyIndex(f))];

    [Theory]
    [MemberData(nameof(Shipped.Ids), MemberType = typeof(Shipped))]
    public void Every_cure_called_sufficient_makes_its_pairing_compatible_and_the_cheapest_comes_first(string family)
    {
        var tried = 0;
        foreach (var (unit, verdict) in Faulty(s_indexes.Single(i => i.Family.Version.Id == family)))
        {
            var ranked = verdict.Cures.OrderByDescending(c => c.Sufficient).ThenBy(c => CureCosts.Of(c, unit.Family).NewParts);
            Assert.Equal(ranked, verdict.Cures);
            foreach (var cure in verdict.Cures.Where(c => c.Sufficient))
            {
                Assert.True(OutcomeAfter(cure, verdict.Rule, unit) == Compatibility.Compatible, $"{verdict.Rule} {cure.Id}");
                tried++;
            }
        }

        Assert.NotEqual(0, tried);
    }

    [Fact]
    public void Where_prices_are_known_the_cheaper_cure_comes_first_though_it_exchanges_more_parts()
    {
        var unit = (Family: s_indexes.Single(i => i.Family.Version.Id == "brackenmere-4"), Unit: Healthy.Brackenmere.Shows("third-gear", "vintage", "late"));
        var rule = unit.Family.Pairings["vintage-3-4"];
        var book = new EstimateBook(new UnitView(unit.Unit.Snapshot, unit.Family));
        var gearKind = unit.Family.Positions["third-gear"].Kind;

        var byParts = PairingJudge.Judge(rule, book).Cures[0];
        var byPrice = PairingJudge.Judge(rule, book, (kind, _) => kind == gearKind ? 90_000 : 1_000).Cures[0];

        Assert.Equal(["third-gear"], byParts.Steps.Select(s => s.Position).Distinct());
        Assert.DoesNotContain("third-gear", byPrice.Steps.Select(s => s.Position));
    }

    /// <summary>A new ring that slips on its cone (common practice, no source): the family's cure is filled up with what the rule reads, and stands alone.</summary>
    [Fact]
    public void A_cure_of_the_family_is_filled_up_to_what_the_rule_looks_at()
    {
        var unit = (Family: s_indexes.Single(i => i.Family.Version.Id == "brackenmere-4"), Unit: Healthy.Brackenmere.Shows("blocker-ring-3", "grip", "slips"));
        var cure = Assert.Single(Judged(unit).Single(v => v.Rule == "third-ring-to-cone").Cures);
        Assert.Equal(("ring-that-grips", true), (cure.Id, cure.Sufficient));
        Assert.Contains(cure.Steps, s => s.Characteristic == "reserve-gap");
    }

    /// <summary>A sound unit with every attribute in turn shown as every value on its list, and another one far down the list with it.</summary>
    private static IEnumerable<((FamilyIndex Family, Bench Unit) Unit, PairingVerdict Verdict)> Faulty(FamilyIndex index)
    {
        (string Position, string Attribute, string Value)[] faults =
        [
            .. from p in index.Family.Positions from a in index.Kinds[p.Kind].Attributes from v in a.Values select (p.Id, a.Id, v.Id),
        ];
        for (var i = 0; i < faults.Length; i++)
        {
            var (first, second) = (faults[i], faults[((31 * i) + 17) % faults.Length]);
            var unit = (index, Healthy.Of(index.Family.Version.Id).Shows(first.Position, first.Attribute, first.Value).Shows(second.Position, second.Attribute, second.Value));
            var book = new EstimateBook(new UnitView(unit.Item2.Snapshot, index));
            foreach (var rule in index.Family.Pairings.Where(r => r.Roles.Values.Any(role => role.Split('/')[0] is var p && (p == first.Position || p == second.Position))))
                yield return (unit, PairingJudge.Judge(rule, book));
        }
    }

    private static IEnumerable<PairingVerdict> Judged((FamilyIndex Family, Bench Unit) u)
    {
        var book = new EstimateBook(new UnitView(u.Unit.Snapshot, u.Family));
        return u.Family.Family.Pairings.Select(r => PairingJudge.Judge(r, book));
    }

    private static Compatibility OutcomeAfter(Cure cure, string rule, (FamilyIndex Family, Bench Unit) u) => PairingJudge.Outcome(
        u.Family.Pairings[rule], new EstimateBook(new UnitView(ProvenCures.Apply(cure, u.Unit.Snapshot, u.Family), u.Family)));
}
