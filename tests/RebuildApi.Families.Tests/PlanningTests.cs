using RebuildApi.Checkers.Plans;
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

    /// <summary>The dog teeth are read so near to their limit that they are too short with about one chance in two hundred: 4.00 of a comeback at 800.00.</summary>
    [Theory]
    [InlineData(null, "found")]
    [InlineData(100L, "third-straight")]
    public void The_surest_plan_exchanges_nothing_for_a_risk_that_is_said_to_be_negligible(long? negligible, string taken)
    {
        var low = ((Exact)Healthy.Brackenmere.Family.Kinds.Single(k => k.Id == "third-gear").Characteristics.Single(c => c.Id == "dog.length").Service!.Low!).Value;
        var near = Healthy.Brackenmere.Reads("third-gear/dog.length", 1, [.. Enumerable.Repeat(Gauges.Reading(new Exact(low + Length.Micrometres(0.31m))), 6)]);
        var request = new PlanRequest { Objective = PlanObjective.MostConservative, Candidates = [StraightThird(25000)], Rates = new PlanRates { NegligibleRisk = negligible, OpenPairingRisk = 0, ConditionalRisk = 0 } };

        var plan = Plan(near, request).Plan!;

        Assert.Equal(taken, Line(plan, "third-gear").Candidate);
        Stands(near, plan);
    }

    [Fact]
    public void A_bought_ring_that_is_declared_as_made_leaves_its_pairing_not_open()
    {
        var ground = Healthy.Brackenmere.Damaged("snap-ring-3-4", "hand-ground", "severe");
        var ring = ground.Family.Series.Single(s => s.Id == "snap-ring-3-4");
        PieceOffer[] plain = [.. ring.Members.Select(m => new PieceOffer(ring.Id, m.Id, 560, 0, null, 6))];
        PieceOffer[] declared = [.. plain.Select(p => p with { Attributes = ImmutableSortedDictionary<string, string>.Empty.Add("surface", "as-made").Add("supply", "selected") })];

        var (open, closed) = (Plan(ground, new PlanRequest { Pieces = [.. plain] }).Plan!, Plan(ground, new PlanRequest { Pieces = [.. declared] }).Plan!);

        Assert.Contains(open.Conditions, c => c.Code == "pairing-open" && c.Subject.Contains("ring", StringComparison.Ordinal));
        Assert.DoesNotContain(closed.Conditions, c => c.Code == "pairing-open");
        Assert.True(closed.Cost.Comeback < open.Cost.Comeback);
        Stands(ground, closed);
    }

    /// <summary>Twenty shops at random, every combination of what they offer for four places put to the checker: nothing that it lets pass costs less.</summary>
    [Fact]
    public void No_combination_that_the_checker_lets_pass_is_cheaper_than_the_plan()
    {
        var random = new Random(11);
        for (var shop = 0; shop < 20; shop++)
        {
            PlanCandidate[] offers =
            [
                StraightThird(random.Next(1, 400) * 100), .. BackTapered(random.Next(1, 300) * 100, random.Next(1, 300) * 100, random.Next(1, 300) * 100),
                Bought("third-back-tapered", "third-gear", random.Next(1, 400) * 100, s_gear, "back-tapered"),
            ];
            // With no comeback to pay for, cost is what parts and bench work cost.
            var request = new PlanRequest { Candidates = [.. offers], Rates = new PlanRates { ComebackCost = 0 }, Cuts = Engine.Selection.CutUse.Never };
            var plan = Plan(Mixed, request).Plan!;
            Stands(Mixed, plan);

            Assert.Equal(Combinations(offers).Where(c => Passes(plan, c)).Min(c => c.Sum(o => o.Price!.Value)), plan.Cost.Parts);
        }
    }

    private static IEnumerable<PlanCandidate[]> Combinations(PlanCandidate[] offers)
    {
        IEnumerable<PlanCandidate[]> all = [[]];
        foreach (var place in offers.GroupBy(o => o.Part.Component.Kind))
            all = all.SelectMany(c => place.Select(o => (PlanCandidate[])[.. c, o]).Append(c)).ToArray();
        return all;
    }

    /// <summary>The planned unit with these parts in place of the plan's, judged by the checker alone.</summary>
    private static bool Passes(Plan plan, PlanCandidate[] chosen)
    {
        string[] places = ["third-gear", "hub-3-4", "sleeve-3-4", "input-gear"];
        var unit = plan.Snapshot with
        {
            Components = [.. plan.Snapshot.Components.Where(c => chosen.All(o => o.Part.Component.Id != c.Id)), .. chosen.Select(o => o.Part.Component)],
            Placements =
            [
                .. plan.Snapshot.Placements.Where(p => p.Role == PlacementRole.Found || !places.Contains(p.Position)),
                .. chosen.Select(o => new Placement(places.Single(p => p == o.Part.Component.Kind), 1, o.Part.Component.Id, PlacementRole.Chosen, Facing.Input, "A")),
            ],
        };
        return PlanChecker.Passes(Healthy.Brackenmere.Family, unit);
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
        var check = PlanChecker.Check(bench.Family, plan.Snapshot, Claimed.By(plan, bench.Family));
        Assert.Empty(check.Faults);
        Assert.True(check.Gaps > 5 && check.Pairings == bench.Family.Pairings.Length);
        Assert.Equal(plan.Cost.Parts, plan.Lines.Sum(l => l.Price ?? 0));
    }
}
