using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Selection;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Selection;

/// <summary>An invented end: end play of a gear set by a ring, a hub held by a snap ring, and an engagement depth that the hub's front face carries.</summary>
public class UnitSelectorTests
{
    private static readonly Length Hundredth = Length.Millimetres(0.01m);

    [Fact]
    public void Two_clearances_that_share_a_washer_come_right_together()
    {
        var family = Coupled();

        var answer = Solve(family, Read(family, 62.20m, 28.70m));

        Assert.Equal(SelectionOutcome.Fits, answer.Outcome);
        Assert.All(answer.Best!.Gaps, g => Assert.True(g.Margin >= 0));
        Assert.Equal("washer-2", PickAt(answer, "washer-place"));
        Assert.Equal(3, answer.Alternatives.Length);
        Assert.True(answer.Best.Rank.CompareTo(answer.Alternatives[0].Rank) <= 0);
    }

    [Fact]
    public void Clearance_that_shares_a_piece_with_the_one_asked_for_is_taken_along()
    {
        var family = Coupled();

        var answer = Solve(family, Read(family, 62.20m, 28.70m), new SelectionRequest { Loops = ["end-play"] });

        Assert.Equal(["end-play", "hub-play"], answer.Best!.Gaps.Select(g => g.Loop));
    }

    [Fact]
    public void Only_what_is_on_the_shelf_is_chosen()
    {
        var family = Coupled();
        var shelf = ImmutableDictionary<string, int>.Empty.Add("washer-1", 1).Add("ring-1", 1).Add("ring-2", 1).Add("ring-3", 1);

        var answer = Solve(family, Read(family, 62.20m, 28.70m), new SelectionRequest { Available = shelf });

        Assert.Equal("washer-1", PickAt(answer, "washer-place"));
    }

    [Fact]
    public void Nothing_on_the_shelf_for_a_position_is_said()
    {
        var family = Coupled();

        var answer = Solve(family, Read(family, 62.20m, 28.70m), new SelectionRequest { Available = ImmutableDictionary<string, int>.Empty.Add("washer-1", 1) });

        Assert.Equal(SelectionOutcome.NothingFits, answer.Outcome);
        Assert.Contains(answer.Reasons, r => r.Code == "selection-none-in-stock" && r.Arguments["position"] == "ring-place");
    }

    [Fact] // Common practice, no source: one part sits in several clearances, so a cut is checked against every one it joins.
    public void Cut_is_chosen_only_when_pieces_alone_do_not_do_it_and_keeps_every_clearance_it_touches()
    {
        var family = WithCut();

        var answer = Solve(family, Read(family, 61.80m, 28.70m));

        Assert.Equal(SelectionOutcome.FitsWithCuts, answer.Outcome);
        var cut = Assert.Single(answer.Cuts);
        Assert.Equal(("face-hub-front", "front"), (cut.Operation, cut.Datum));
        Assert.True(cut.Change < Length.Zero);
        Assert.Equal(Length.Millimetres(28.70m) + cut.Change, cut.After);
        Assert.Equal(["end-play", "engagement", "hub-play"], cut.Touches.Select(t => t.Loop).Order());
        Assert.Equal("width", Assert.Single(cut.RemeasureGate));
        Assert.Contains(cut.Reasons, r => r.Code == "cut-is-a-proposal");
    }

    [Fact]
    public void More_and_less_than_a_cut_says_still_fits_and_a_nanometre_beyond_does_not()
    {
        var family = WithCut();
        var answer = Solve(family, Read(family, 61.80m, 28.70m));
        var cut = Assert.Single(answer.Cuts);

        Assert.True(FitsAfter(cut.Change - cut.MayBeMore));
        Assert.True(FitsAfter(cut.Change + cut.MayBeLess));
        Assert.False(FitsAfter(cut.Change - cut.MayBeMore - new Length(1)) && FitsAfter(cut.Change + cut.MayBeLess + new Length(1)));

        bool FitsAfter(Length change)
        {
            var cutHub = Read(family, 61.80m, 28.70m + change.InMillimetres, 9.00m + change.InMillimetres);
            var picks = Solve(family, cutHub, new SelectionRequest { Cuts = CutUse.Never, Alternatives = 24 });
            return picks.Alternatives.Prepend(picks.Best!).First(s => Same(s, answer.Best!)).Rank.Margin >= 0 && EngagementFits(change);
        }

        bool EngagementFits(Length change) => Length.Millimetres(9.00m) + change >= Length.Millimetres(8.70m);
    }

    [Fact]
    public void Cut_that_would_spoil_a_clearance_that_is_not_read_is_withheld()
    {
        var family = WithCut();
        var unread = Stripped(family).Reads("shaft", "shoulder", "mic-1", 61.80m).Reads("gear", "length", "mic-1", 30.10m).Reads("hub", "width", "mic-1", 28.70m)
            .Reads("shaft", "groove", "mic-1", 34.30m);

        var answer = Solve(family, unread);

        Assert.Equal(SelectionOutcome.NothingFits, answer.Outcome);
        Assert.Contains(answer.Reasons, r => r.Code == "selection-cut-touches-unread" && r.Arguments["loop"] == "engagement");
    }

    [Fact]
    public void Nothing_fits_says_for_each_clearance_what_it_misses_by_and_what_to_machine()
    {
        var family = WithCut();

        var answer = Solve(family, Read(family, 61.00m, 28.70m));

        Assert.Equal(SelectionOutcome.NothingFits, answer.Outcome);
        var miss = Assert.Single(answer.Misses, m => m.Loop == "end-play");
        Assert.True(miss.ToEnter > Length.Zero);
        Assert.Contains(miss.Cuts, c => c.Operation == "face-hub-front" && c.Permission == CutPermission.Refused);
    }

    [Fact] // A rectangular tolerance of ±0.05 about the middle of a window of ±0.02: 0.40 of it is inside, for both clearances alike; computed here.
    public void Chance_of_two_clearances_that_share_a_washer_is_not_the_product_of_their_chances()
    {
        var exact = Named().Kind(new PartKind("washer-kind", Words("washer"), [LengthOf("thickness", 0, 9)], [], [], [], null, true)).Position("washer-place", "washer-kind")
            .Series("washer", "washer-kind", Length.Millimetres(0.05m), Length.Millimetres(3.00m))
            .Loop("one", Window(0.00m, 0.04m)!, new Term(new Fixed(Length.Millimetres(3.02m)), 1), Piece("washer", "washer-place"))
            .Loop("two", Window(0.00m, 0.04m)!, new Term(new Fixed(Length.Millimetres(3.02m)), 1), Piece("washer", "washer-place"));

        var answer = Solve(exact, SnapshotBuilder.Of(exact.Family));

        Assert.InRange(Assert.Single(answer.Chances), 0.40 - 0.01, 0.40 + 0.01);
    }

    [Fact]
    public void Another_target_moves_the_choice()
    {
        var family = Coupled();
        var wide = new FamilyBuilder(family.Family with { Loops = [.. family.Family.Loops.Select(l => l with { Window = Window(0.00m, 0.40m)! })] });

        var low = Solve(wide, Read(wide, 62.20m, 28.70m), new SelectionRequest { Targets = ImmutableDictionary<string, Length>.Empty.Add("end-play", Length.Millimetres(0.10m)) });

        Assert.NotEqual(low.Best!.Rank.Distance, Solve(wide, Read(wide, 62.20m, 28.70m)).Best!.Rank.Distance);
    }

    [Fact]
    public void Unit_of_which_nothing_is_read_is_not_assessed_and_says_what_to_read()
    {
        var family = Coupled();

        var answer = Solve(family, Stripped(family));

        Assert.Equal(SelectionOutcome.NotAssessed, answer.Outcome);
        Assert.Contains(answer.LeftOut.Single(l => l.Loop == "end-play").Reasons, r => r.Code == "loop-member-not-read" && r.Arguments["at"] == "gear/length");
    }

    [Fact]
    public void Unknown_clearance_series_or_target_outside_the_window_is_refused()
    {
        var family = Coupled();
        var read = Read(family, 62.20m, 28.70m);

        Assert.Throws<ArgumentException>("request", () => Solve(family, read, new SelectionRequest { Loops = ["no-such-loop"] }));
        Assert.Throws<ArgumentException>("of", () => Solve(family, read, new SelectionRequest { Series = ImmutableDictionary<string, string>.Empty.Add("ring-place", "no-such-series") }));
        Assert.Throws<ArgumentException>("loop", () => Solve(family, read, new SelectionRequest { Targets = ImmutableDictionary<string, Length>.Empty.Add("end-play", Length.Millimetres(9)) }));
    }

    /// <summary>End play: shoulder − gear − hub − washer; play of the hub: groove − hub − washer − ring.</summary>
    private static FamilyBuilder Coupled() => Named()
        .Part("shaft", LengthOf("shoulder", 1, 900), LengthOf("groove", 1, 900))
        .Part("gear", LengthOf("length", 1, 900))
        .Part("hub", LengthOf("width", 1, 900), LengthOf("front-step", 1, 900))
        .Kind(new PartKind("washer-kind", Words("washer"), [LengthOf("thickness", 0, 9)], [], [], [], null, true)).Position("washer-place", "washer-kind")
        .Kind(new PartKind("ring-kind", Words("ring"), [LengthOf("thickness", 0, 9)], [], [], [], null, true)).Position("ring-place", "ring-kind")
        .Series("washer", "washer-kind", Length.Zero, Length.Millimetres(3.05m), Length.Millimetres(3.15m), Length.Millimetres(3.25m))
        .Series("ring", "ring-kind", Length.Zero, [.. Enumerable.Range(23, 8).Select(tenths => Length.Millimetres(tenths / 10m))])
        .Loop("end-play", Window(0.15m, 0.35m)!, Opens("shaft", "shoulder"), Closes("gear", "length"), Closes("hub", "width"), Piece("washer", "washer-place"))
        .Loop("hub-play", Window(0.00m, 0.10m)!, Opens("shaft", "groove"), Closes("hub", "width"), Piece("ring", "ring-place"),
            new Term(new OfSeries("washer", "washer-place"), -1, 1));

    private static FamilyBuilder WithCut() => Coupled()
        .Loop("engagement", Window(8.70m, 9.50m)!, Opens("hub", "front-step"), new Term(new Fixed(Length.Zero), -1))
        .Operation(new Operation(
            "face-hub-front", Words("face the hub"), "hub",
            [
                new Effect(new Address("", "width"), -40 * Hundredth, Length.Zero, Hundredth, "front", Limits.AtLeast(Length.Millimetres(28.00m), Invented), null),
                new Effect(new Address("", "front-step"), -40 * Hundredth, Length.Zero, Hundredth, "front", null, null),
            ],
            [], 30, [Words("hot chips")], ["width"]));

    private static SnapshotBuilder Stripped(FamilyBuilder family) =>
        SnapshotBuilder.Of(family.Family).Micrometer().Found("shaft", "shaft").Found("gear", "gear").Found("hub", "hub");

    private static SnapshotBuilder Read(FamilyBuilder family, decimal shoulder, decimal hub, decimal frontStep = 9.00m) => Stripped(family)
        .Reads("shaft", "shoulder", "mic-1", shoulder).Reads("shaft", "groove", "mic-1", 34.30m)
        .Reads("gear", "length", "mic-1", 30.10m).Reads("hub", "width", "mic-1", hub).Reads("hub", "front-step", "mic-1", frontStep);

    private static UnitSelection Solve(FamilyBuilder family, SnapshotBuilder snapshot, SelectionRequest? request = null) =>
        UnitSelector.Solve(new EstimateBook(new UnitView(snapshot.Snapshot, new FamilyIndex(family.Family))), request ?? new SelectionRequest());

    private static string PickAt(UnitSelection answer, string position) => string.Join('+', answer.Best!.Picks.Single(p => p.Choice == position).Option.Members);

    private static bool Same(SelectionSolution a, SelectionSolution b) =>
        a.Picks.Where(p => !p.Option.Members.IsEmpty).Select(p => (p.Choice, p.Option.Members[0])).SequenceEqual(b.Picks.Where(p => !p.Option.Members.IsEmpty).Select(p => (p.Choice, p.Option.Members[0])));
}
