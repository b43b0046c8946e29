using System.Collections.Immutable;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Allocation;

/// <summary>
/// What can the shelf finish? Needs that share no part fall into groups of their own, each an assignment; only when not every unit can be completed, or
/// sets must stay whole, does the choice of units tie the groups together and is searched.
/// </summary>
public static class Allocator
{
    private const string Rule = "allocation";

    /// <summary>Allocates parts to units.</summary>
    /// <param name="problem">Units, parts and offers.</param>
    /// <param name="cancellation">Stops it; the best found by then is returned with its bounds.</param>
    /// <exception cref="ArgumentException">An offer names what is not there, twice the same, or a cost below zero.</exception>
    public static AllocationAnswer Allocate(AllocationProblem problem, CancellationToken cancellation = default)
    {
        AllocationCheck.Require(problem);
        var groups = new NeedGroups(problem);
        var all = Enumerable.Range(0, problem.Units.Length).ToArray();
        if (groups.HasSets)
            return Written(new SetSearch(problem, groups, problem.MostSteps, cancellation).Run(), problem, groups, "allocation-with-sets");
        if (groups.Assign(all) is { } complete)
            return Written(new AllocationFound(all, complete, all.Length, complete.Cost), problem, groups, "allocation-split");
        return Written(new UnitSearch(problem, groups, problem.MostSteps, cancellation).Run(), problem, groups, "allocation-searched");
    }

    private static AllocationAnswer Written(AllocationFound found, AllocationProblem problem, NeedGroups groups, string how)
    {
        var units = found.Units.Order().ToArray();
        var used = found.Assigned.Offers.Select(o => o.Part).ToHashSet(StringComparer.Ordinal);
        var misses = Enumerable.Range(0, problem.Units.Length).Except(units).Select(u => (Unit: u, Lacking: groups.Lacking(u, used))).ToImmutableArray();
        return new AllocationAnswer(
            [.. units.Select(u => problem.Units[u].Id)], found.Assigned.Offers, found.Assigned.Cost, found.MostUnits, found.LeastCost,
            [.. misses.Select(m => new AllocationMiss(problem.Units[m.Unit].Id, m.Lacking, Because.Of("allocation-lacks", problem.Units[m.Unit].Id, ("places", string.Join(", ", m.Lacking)))))],
            [.. misses.Where(m => m.Lacking.Length == 1).GroupBy(m => m.Lacking[0], StringComparer.Ordinal)
                .OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => new AllocationPurchase(g.Key, [.. g.Select(m => problem.Units[m.Unit].Id)], Because.Of("allocation-purchase", g.Key, ("units", g.Count()))))],
            [Because.Of(how, Rule, ("completed", units.Length), ("units", problem.Units.Length), ("most", found.MostUnits))]);
    }
}

/// <summary>Units that are completed, with what goes where.</summary>
internal sealed record AllocationFound(int[] Units, Assigned Assigned, int MostUnits, long LeastCost);

/// <summary>What goes where, and what it costs.</summary>
internal sealed record Assigned(ImmutableArray<AllocationOffer> Offers, long Cost);
