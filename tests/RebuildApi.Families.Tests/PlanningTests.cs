using RebuildApi.Checkers;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>Whole units of the shipped families, planned. Computed here, no source; prices are invented.</summary>
public sealed class PlanningTests
{
    private static readonly string[] s_gear = ["dog.form", "dog.drive-flank", "dog.coast-flank", "dog.stop", "dog.teeth", "vintage", "ratio-set", "hand"];

    /// <summary>One straight sleeve between a back-tapered third gear and a straight input gear.</summary>
    private static Bench Mixed { get; } = Healthy.Brackenmere.Shows("third-gear", "dog.form", "back-tapered");

    [Theory]
    [MemberData(nameof(Shipped.Ids), MemberType = typeof(Shipped))]
    public void A_unit_that_is_sound_in_everything_is_planned_to_go_back_as_it_is(string id)
    {
        var answer = Plan(Healthy.Of(id), new PlanRequest());

        Assert.Equal(SolveStatus.Proven, answer.Status);
        Assert.All(answer.Plan!.Lines, l => Assert.Equal(Outcome.Conforming, l.Outcome));
        Assert.Equal((0, 0), (answer.Plan.Cost.Parts, answer.Plan.Cost.Comeback));
        Assert.Empty(answer.Plan.Conditions);
        Stands(Healthy.Of(id), answer.Plan);
    }

    [Fact]
    public void A_straight_and_a_back_tapered_gear_on_one_sleeve_are_solved_by_a_straight_gear_where_that_is_cheapest()
    {
        var plan = Plan(Mixed, new PlanRequest { Candidates = [StraightThird(25000), .. BackTapered(hub: 12000, sleeve: 9000, input: 21000)] }).Plan!;

        Assert.Equal("third-straight", Line(plan, "third-gear").Candidate);
        Assert.Equal("found", Line(plan, "sleeve-3-4").Candidate);
        Assert.Equal(25000, plan.Cost.Parts);
        Stands(Mixed, plan);
    }

    [Fact]
    public void The_same_is_solved_by_a_back_tapered_sleeve_with_its_hub_and_input_gear_where_that_is_cheapest()
    {
        var plan = Plan(Mixed, new PlanRequest { Candidates = [StraightThird(90000), .. BackTapered(hub: 12000, sleeve: 9000, input: 21000)] }).Plan!;

        Assert.Equal(
            ("found", "sleeve-back-tapered", "hub-set", "input-back-tapered"),
            (Line(plan, "third-gear").Candidate, Line(plan, "sleeve-3-4").Candidate, Line(plan, "hub-3-4").Candidate, Line(plan, "input-gear").Candidate));
        Assert.Equal(42000, plan.Cost.Parts);
        Assert.Equal("third-straight", Line(plan, "third-gear").NextBest!.Candidate);
        Assert.InRange(Line(plan, "third-gear").NextBest!.Extra, 1, 90000 - 42000);
        Stands(Mixed, plan);
    }

    [Fact]
    public void A_used_gear_that_nobody_looked_at_is_cheaper_and_a_new_one_is_surer()
    {
        var used = new PlanCandidate("third-used", PartSource.Shelf, Candidate.Of(Part("shelf-7", "third-gear", Origin.Shelf, s_gear, "straight")), 4000, 0, null, 1);
        var request = new PlanRequest { Candidates = [StraightThird(30000), used] };

        var answer = Plan(Mixed, request);
        var cheaper = answer.Plan!;
        var surer = Plan(Mixed, request with { Objective = PlanObjective.MostConservative }).Plan!;

        Assert.Equal(("third-used", Outcome.NotAssessed), (Line(cheaper, "third-gear").Candidate, Line(cheaper, "third-gear").Outcome));
        Assert.Contains(cheaper.Conditions, c => c.Code == "look-first" && c.Subject == "third-gear");
        Assert.Equal("third-straight", Line(surer, "third-gear").Candidate);
        Assert.True(cheaper.Cost.Total < surer.Cost.Total && cheaper.Cost.Comeback > surer.Cost.Comeback);
        Assert.True(answer.ToMeasure.Single(m => m.Candidate == "third-used") is { IsInPlan: true, Value: > 0 });
        var front = UnitPlanner.Front(BookOf(Mixed), request, new NoHooks());
        Assert.Equal(["third-used", "third-straight"], front.Select(p => Line(p, "third-gear").Candidate));
    }

    [Fact]
    public void A_ceiling_below_the_cheapest_plan_is_named_as_what_stands_in_the_way()
    {
        var request = new PlanRequest { Candidates = [StraightThird(25000)], Limits = new PlanLimits { MostCost = 10000 } };

        var answer = Plan(Mixed, request);

        Assert.Equal(SolveStatus.Impossible, answer.Status);
        var conflict = Assert.Single(answer.Conflicts);
        Assert.True(conflict.IsSmallest);
        Assert.Contains(conflict.Demands, d => d is { Id: "cost", Kind: DemandKind.Limit });
        Assert.Contains(answer.Unlocks, u => u is { What: UnlockKind.RelaxedLimit, Subject: "cost" } && u.Cost >= 25000);
    }

    [Fact]
    public void Without_a_part_to_change_it_says_that_the_gear_does_not_run_in_the_sleeve_and_what_would_open_the_way()
    {
        var answer = Plan(Mixed, new PlanRequest());

        Assert.Equal(SolveStatus.Impossible, answer.Status);
        Assert.Equal("third-engagement-form", Assert.Single(Assert.Single(answer.Conflicts).Demands).Id);
        Assert.Contains(answer.Unlocks, u => u is { What: UnlockKind.Purchase, Subject: "third-gear" });
        Assert.DoesNotContain(answer.Unlocks, u => u.Subject == "sleeve-3-4");
    }

    private static PlanCandidate StraightThird(long price) => Bought("third-straight", "third-gear", price, s_gear, "straight");

    private static IEnumerable<PlanCandidate> BackTapered(long hub, long sleeve, long input) =>
    [
        Bought("hub-set", "hub-3-4", hub, ["teeth", "vintage", "key-slot", "supplied"], null) with { Set = "synchro-set" },
        Bought("sleeve-back-tapered", "sleeve-3-4", sleeve, ["form", "teeth", "vintage", "supplied"], "back-tapered") with { Set = "synchro-set" },
        Bought("input-back-tapered", "input-gear", input, s_gear, "back-tapered"),
    ];

    private static PlanCandidate Bought(string id, string position, long price, string[] attributes, string? form) =>
        new(id, PartSource.Catalogue, Candidate.Of(Part(id, position, Origin.New, attributes, form)), price, 3, "Invented Parts", null);

    /// <summary>Attributes as on the part that came in, but for the form of its teeth.</summary>
    private static Component Part(string id, string position, Origin origin, string[] attributes, string? form)
    {
        var found = Healthy.Brackenmere.Snapshot.Components.Single(c => c.Id == position);
        var known = attributes.Where(found.Attributes.ContainsKey).ToImmutableSortedDictionary(a => a, a => a is "dog.form" or "form" ? form! : found.Attributes[a], StringComparer.Ordinal);
        return new Component(id, 1, found.Kind, origin, known, null);
    }

    private static PlanLine Line(Plan plan, string position) => plan.Lines.Single(l => l.Position == position);

    private static PlanAnswer Plan(Bench bench, PlanRequest request) => UnitPlanner.Plan(BookOf(bench), request, new NoHooks());

    private static EstimateBook BookOf(Bench bench) => new(new UnitView(bench.Snapshot, new FamilyIndex(bench.Family)));

    private static void Stands(Bench bench, Plan plan)
    {
        Assert.Empty(PlanChecker.Faults(bench.Family, plan.Snapshot));
        Assert.True(PlanChecker.GapsChecked(bench.Family, plan.Snapshot) > 5);
        Assert.Equal(plan.Cost.Parts, plan.Lines.Sum(l => l.Price ?? 0));
    }
}
