using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Reasons;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Planning;

/// <summary>Which demands can't all be met, in plain words.</summary>
internal sealed class Conflicts(PlanModel model, PlanFinder finder, IPlanSolver solver, CancellationToken cancellation)
{
    private const string Rule = "plan";

    /// <summary>Nodes of the search that all tries share: a person waits for the answer.</summary>
    private const long MostSteps = 100_000;

    /// <summary>The conflicts, as the names of their demands.</summary>
    public ImmutableArray<FoundConflict> Find() =>
        ConflictSearch.Find(finder.Problem(), solver, new PlanEffort(Math.Min(MostSteps, model.Request.Effort.MostSteps)), cancellation);

    /// <summary>A conflict in words; places for which there is nothing at all are conflicts of their own.</summary>
    public ImmutableArray<PlanConflict> Written(ImmutableArray<FoundConflict> cores) =>
    [
        .. model.Empty.Select(p => new PlanDemand(p.Subject, DemandKind.Part, Because.Of("demand-something-there", p.Subject))).Select(d => Written([d], true)),
        .. cores.Select(c => Written([.. c.Demands.Select(name => model.Demands[name])], c.IsSmallest)),
    ];

    private PlanConflict Written(ImmutableArray<PlanDemand> demands, bool isSmallest) => new(
        demands,
        Because.Of(isSmallest ? "plan-conflict" : "plan-conflict-unproven", Rule, ("demands", string.Join(" ", demands.Select(d => $"{d.Id}: {model.Book.View.Family.Say(d.Reason)}")))))
    {
        IsSmallest = isSmallest,
    };
}
