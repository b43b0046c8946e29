using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>Whole units of the shipped families, planned. Computed here, no source.</summary>
public sealed class PlanningTests
{
    [Theory]
    [MemberData(nameof(Shipped.Ids), MemberType = typeof(Shipped))]
    public void A_unit_that_is_sound_in_everything_is_planned_to_go_back_as_it_is(string id)
    {
        var answer = UnitPlanner.Plan(BookOf(Healthy.Of(id)), new PlanRequest(), new NoHooks());

        Assert.Equal(SolveStatus.Proven, answer.Status);
        Assert.All(answer.Plan!.Lines, l => Assert.Equal(Outcome.Conforming, l.Outcome));
        Assert.Equal((0, 0), (answer.Plan.Cost.Parts, answer.Plan.Cost.Comeback));
        Assert.Empty(answer.Plan.Conditions);
    }

    private static EstimateBook BookOf(Bench bench) => new(new UnitView(bench.Snapshot, new FamilyIndex(bench.Family)));
}
