using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>Every pairing of every family holds on a sound unit and is broken by some one change of one of its parts: no rule is there for show.</summary>
public class BothWaysTests
{
    public static TheoryData<string> Ids => Shipped.Ids;

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_pairing_holds_on_a_sound_unit_and_is_broken_by_one_change(string id)
    {
        var bench = Healthy.Of(id);
        var index = new FamilyIndex(bench.Family);

        var silent = bench.Family.Pairings.Where(rule =>
            Judge(bench, index, rule) != Compatibility.Compatible
            || !Changes(bench, index, rule).Any(b => Judge(b, index, rule) is Compatibility.Incompatible or Compatibility.Conditional));

        Assert.Empty(silent.Select(r => r.Id));
    }

    private static Compatibility Judge(Bench bench, FamilyIndex index, PairingRule rule) =>
        PairingJudge.Judge(rule, new EstimateBook(new UnitView(bench.Snapshot, index))).Outcome;

    private static IEnumerable<Bench> Changes(Bench bench, FamilyIndex index, PairingRule rule) =>
        rule.Roles.Values.Select(r => r.Split('/')[0]).Distinct().SelectMany(p => Placed(bench, p).Concat(Seen(bench, index, p)).Concat(Read(bench, index, p)));

    private static IEnumerable<Bench> Seen(Bench bench, FamilyIndex index, string position) =>
        from a in index.KindAt(position)!.Attributes
        from v in a.Values
        select bench.Shows(position, a.Id, v.Id);

    private static IEnumerable<Bench> Read(Bench bench, FamilyIndex index, string position) =>
        from c in index.KindAt(position)!.Characteristics
        where c is { Dimension: Dimension.Length, DerivedFrom: null }
        let top = index.NewLimitsAt(new Address(position, c.Id))?.High as Exact
        where top is not null
        let far = new Length(top.Value.Nanometres * 13 / 10)
        select Enumerable.Range(1, index.Positions[position].Quantity).Aggregate(bench, (b, i) =>
            b.Reads($"{position}/{c.Id}", i, [.. Enumerable.Repeat(Gauges.Reading(new Exact(far)), c.MinimumReadings)]));

    /// <summary>Turned on its mate, turned round, or exchanged.</summary>
    private static IEnumerable<Bench> Placed(Bench bench, string position) =>
    [
        bench.Placing(position, p => p with { IndexMark = "B" }),
        bench.Placing(position, p => p with { Facing = p.Facing == Facing.Input ? Facing.Output : Facing.Input }),
        bench.Exchanges(position),
    ];
}
