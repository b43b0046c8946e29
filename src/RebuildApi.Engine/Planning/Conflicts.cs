using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Planning;

/// <summary>Which demands can't all be met, in plain words.</summary>
internal sealed class Conflicts(PlanModel model, PlanFinder finder, IPlanSolver solver, CancellationToken cancellation)
{
    private const string Rule = "plan";

    /// <summary>The conflicts, as the names of their demands.</summary>
    public ImmutableArray<ImmutableArray<string>> Find() => ConflictSearch.Find(finder.Feasibility(), solver, model.Request.Effort, cancellation);

    /// <summary>A conflict in words; places for which there is nothing at all are conflicts of their own.</summary>
    public ImmutableArray<PlanConflict> Written(ImmutableArray<ImmutableArray<string>> cores) =>
    [
        .. model.Empty.Select(p => new PlanDemand(p.Subject, DemandKind.Part, Because.Of("demand-something-there", p.Subject))).Select(d => Written([d])),
        .. cores.Select(c => Written([.. c.Select(name => model.Demands[name])])),
    ];

    private static PlanConflict Written(ImmutableArray<PlanDemand> demands) => new(
        demands,
        Because.Of("plan-conflict", Rule, ("demands", string.Join(" ", demands.Select(d => $"{d.Id}: {ReasonText.Words(d.Reason)}")))));
}
