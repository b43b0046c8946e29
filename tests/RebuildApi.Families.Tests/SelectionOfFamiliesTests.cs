using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Selection;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>A sound unit of each shipped family with no ring, shim or washer chosen yet: one answer brings all its clearances right.</summary>
public class SelectionOfFamiliesTests
{
    public static TheoryData<string> Families => ["brackenmere-4", "ostrand-5", "kestermere-6"];

    [Theory]
    [MemberData(nameof(Families))]
    public void Pieces_alone_bring_every_clearance_of_a_sound_unit_right(string family)
    {
        var bench = WithoutPieces(family);

        var selection = Solve(bench);

        Assert.Equal(SelectionOutcome.Fits, selection.Outcome);
        Assert.Empty(selection.LeftOut);
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void The_pieces_that_were_chosen_are_found_right_when_they_are_fitted(string family)
    {
        var bench = WithoutPieces(family);
        var chosen = Solve(bench).Best!.Picks.Where(p => bench.Family.Positions.Any(x => x.Id == p.Choice));

        var judged = chosen.Aggregate(bench, Fitting).Judge();

        Assert.All(
            judged.Clearances.Where(c => bench.Family.Loops.Single(l => l.Id == c.Verdict.Subject).Terms.Any(t => t.Of is OfSeries)),
            c => Assert.True(c.Verdict.Outcome == Outcome.Conforming, $"{c.Verdict.Subject}: {c.Verdict.Outcome}"));
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void The_same_unit_gets_the_same_selection_again(string family)
    {
        var bench = WithoutPieces(family);
        static string Words(UnitSelection s) => string.Join(';', s.Best!.Picks.Select(p => $"{p.Choice}:{string.Join('+', p.Option.Members)}"));

        Assert.Equal(Words(Solve(bench)), Words(Solve(bench)));
    }

    private static UnitSelection Solve(Bench bench) =>
        UnitSelector.Solve(new EstimateBook(new UnitView(bench.Snapshot, new FamilyIndex(bench.Family))), new SelectionRequest());

    private static Bench WithoutPieces(string family)
    {
        var bench = Healthy.Of(family);
        return Pieces(bench).Select(p => p.Position).Distinct().Aggregate(bench, (b, position) => b.Empties(position));
    }

    private static IEnumerable<OfSeries> Pieces(Bench bench) => bench.Family.Loops.SelectMany(l => l.Terms).Select(t => t.Of).OfType<OfSeries>();

    private static Bench Fitting(Bench bench, SelectionPick pick)
    {
        var series = bench.Family.Series.Single(s => s.Id == Pieces(bench).First(p => p.Position == pick.Choice).Series);
        var parts = pick.Option.Members.Select((member, i) => (
            Component: new Component($"{pick.Choice}-new-{i + 1}", 1, series.Kind, Origin.New, ImmutableSortedDictionary<string, string>.Empty.Add("member", member), null),
            Index: i + 1)).ToArray();
        return bench with
        {
            Snapshot = bench.Snapshot with
            {
                Components = bench.Snapshot.Components.AddRange(parts.Select(p => p.Component)),
                Placements = bench.Snapshot.Placements.AddRange(parts.Select(p =>
                    new Placement(pick.Choice, p.Index, p.Component.Id, PlacementRole.Chosen, Facing.Unspecified, null))),
            },
        };
    }
}
