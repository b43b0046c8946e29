using RebuildApi.Checkers.Pairings;
using RebuildApi.Checkers.Plans;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>
/// The independent checker against the engine on units at random: every verdict on a part, every clearance, every pairing. Where they differ one of the two
/// is wrong. Computed here, no source.
/// </summary>
public sealed class CheckerTests
{
    private const int Units = 60;

    [Theory]
    [MemberData(nameof(Shipped.Ids), MemberType = typeof(Shipped))]
    public void What_the_engine_says_of_a_unit_at_random_is_what_the_checker_finds(string id)
    {
        var family = Shipped.Of(id);
        var index = new FamilyIndex(family);
        var (verdicts, gaps, pairings) = (0, 0, 0);
        for (var number = 0; number < Units; number++)
        {
            var unit = RandomUnit.Of(family, number);
            var check = PlanChecker.Compare(family, unit, Claimed.By(UnitJudge.Judge(new UnitView(unit, index), new NoHooks()), family));
            Assert.True(check.Faults.Count == 0, $"unit {number}: {string.Join("; ", check.Faults)}");
            (verdicts, gaps, pairings) = (verdicts + check.Verdicts, gaps + check.Gaps, pairings + check.Pairings);
        }

        Assert.Equal(Units * family.Pairings.Length, pairings);
        Assert.True(verdicts > Units * family.Positions.Length / 2 && gaps > Units / 2, $"{verdicts} verdicts, {gaps} gaps");
    }

    [Theory]
    [InlineData("[first/length] - [second/width] >= [least] and not ([first/hand] == 'right')")]
    [InlineData("Abs([first/length] - [second/width]) * 2 > Max([least], 3.5) or [first/hand] == 'left'")]
    [InlineData("Min([first/length], [second/width]) / [least] < 9 and [second/width] != 4")]
    public void An_expression_of_a_family_comes_to_the_same(string holds)
    {
        var family = Shipped.Of("brackenmere-4");
        var rule = family.Pairings[0] with
        {
            Id = "own-expression",
            Template = "expression",
            Roles = new Dictionary<string, string> { ["first"] = "third-gear", ["second"] = "hub-3-4" },
            Parameters = new Dictionary<string, Quantity> { ["least"] = new Exact(Length.Millimetres(4)) },
            Options = new Dictionary<string, string> { ["holds"] = holds },
            WhenBroken = Compatibility.Incompatible,
        };
        var index = new FamilyIndex(family);
        var outcomes = new HashSet<Compatibility>();
        for (var number = 0; number < 4 * Units; number++)
        {
            var unit = RandomUnit.Of(family, number);
            var said = PairingJudge.Outcome(rule, new Engine.Measuring.EstimateBook(new UnitView(unit, index)));
            Assert.Contains(said, PairingChecks.Of(rule, new CheckedValues(new CheckedUnit(family, unit)))!);
            outcomes.Add(said);
        }

        Assert.True(outcomes.Count > 1, string.Join(", ", outcomes));
    }

    [Fact]
    public void Every_pairing_template_is_written_down_again() =>
        Assert.Equal(Templates.All.Select(t => t.Id).Order(StringComparer.Ordinal), PairingChecks.Templates.Order(StringComparer.Ordinal));

    /// <summary>What the checker is for: a claim that is not so is found, whatever it is about.</summary>
    [Fact]
    public void A_claim_that_is_not_so_is_found()
    {
        var bench = Healthy.Brackenmere.Damaged("third-gear", "macropitting", "severe").Shows("third-gear", "dog.form", "back-tapered");
        var sound = Claimed.By(Healthy.Brackenmere.Judge(), bench.Family);

        var faults = PlanChecker.Check(bench.Family, bench.Snapshot, sound).Faults;

        Assert.Contains(faults, f => f.StartsWith("third-gear#1", StringComparison.Ordinal));
        Assert.Contains(faults, f => f.StartsWith("third-engagement-form", StringComparison.Ordinal));
        var loop = sound.Clearances.First(c => c.Value.Gap is not null);
        var moved = sound with { Clearances = new Dictionary<string, (Outcome, double?)>(sound.Clearances) { [loop.Key] = (loop.Value.Outcome, loop.Value.Gap + 10_000) } };
        Assert.Contains(PlanChecker.Check(bench.Family, bench.Snapshot, moved).Faults, f => f.StartsWith(loop.Key, StringComparison.Ordinal));
    }

    /// <summary>Student's distribution: GUM (JCGM 100:2008) table G.2, p = 95 % two-sided: 12.71, 2.57, 2.23, 2.09, and 1.960 for infinitely many.</summary>
    [Theory]
    [InlineData(12.71, 1)]
    [InlineData(2.57, 5)]
    [InlineData(2.23, 10)]
    [InlineData(2.09, 20)]
    [InlineData(1.960, double.PositiveInfinity)]
    public void The_checker_has_the_published_chances(double t, double freedom) => Assert.Equal(0.975, Student.ChanceBelow(t, freedom), 3);
}
