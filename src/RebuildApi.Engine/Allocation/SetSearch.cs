using System.Collections.Immutable;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Allocation;

/// <summary>
/// Sets that stay whole, put to the general solver: one choice for each unit (completed or not) and for each of its needs (which part, or none); a unit left
/// costs more than all parts together. A part of a set goes in only with all the others of its set in the same unit.
/// </summary>
internal sealed class SetSearch(AllocationProblem problem, NeedGroups groups, long steps, CancellationToken cancellation)
{
    private readonly ImmutableArray<(int Unit, string Place, AllocationOffer[] Offers)> _needs =
        [.. Enumerable.Range(0, problem.Units.Length).SelectMany(u => groups.NeedsOf(u).Select(n => (u, n.Place, n.Offers)))];

    private readonly IReadOnlyDictionary<string, AllocationPart> _parts = problem.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);

    private int Units => problem.Units.Length;

    /// <summary>The best way, with how far another may be from it.</summary>
    public AllocationFound Run()
    {
        var left = 1 + _needs.Sum(n => n.Offers.Select(o => o.Cost).DefaultIfEmpty().Max());
        var solution = new BranchAndBound().Solve(new PlanProblem([.. Choices(left)], [.. Tables()], [.. Sums()]), new PlanEffort(steps), cancellation);
        if (!solution.Exists)
            return new AllocationFound([], new Assigned([], 0), Units, 0);
        var offers = _needs.Select((n, i) => n.Offers.ElementAtOrDefault(solution.Picks[Units + i] - 1)).OfType<AllocationOffer>().ToImmutableArray();
        var done = Enumerable.Range(0, Units).Where(u => solution.Picks[u] == 1).ToArray();
        var (lost, cost) = Math.DivRem(solution.Bound, left);
        var most = Units - (int)lost;
        return new AllocationFound(done, new Assigned(offers, offers.Sum(o => o.Cost)), most, most == done.Length ? cost : 0);
    }

    private IEnumerable<PlanChoice> Choices(long left) => problem.Units.Select(u => new PlanChoice(u.Id, [left, 0]))
        .Concat(_needs.Select(n => new PlanChoice(n.Place, [0, .. n.Offers.Select(o => o.Cost)])));

    /// <summary>All needs of a unit are met or none is.</summary>
    private IEnumerable<PlanTable> Tables() => _needs.Select((n, i) => new PlanTable(
        "complete", [n.Unit, Units + i],
        [0, .. n.Offers.Select(_ => PlanTable.Forbidden), PlanTable.Forbidden, .. n.Offers.Select(_ => 0L)]));

    /// <summary>A part goes to one place at most; of a set, as many of each part go to a unit as of the others.</summary>
    private IEnumerable<PlanSum> Sums()
    {
        foreach (var part in _needs.SelectMany((n, i) => n.Offers.Select(o => (o.Part, i))).GroupBy(x => x.Part, x => x.i, StringComparer.Ordinal).Where(g => g.Count() > 1))
            yield return new PlanSum("part", long.MinValue, 1, [.. part.Select(i => Term(i, o => o.Part == part.Key ? 1 : 0))]);
        foreach (var set in problem.Parts.Where(p => p.Set is not null).GroupBy(p => p.Set, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            var parts = set.Select(p => p.Id).ToArray();
            foreach (var unit in _needs.Select((n, i) => (n, i)).Where(x => x.n.Offers.Any(o => SetOf(o) == set.Key)).GroupBy(x => x.n.Unit, x => x.i))
            {
                foreach (var pair in parts.Zip(parts.Skip(1)))
                    yield return new PlanSum("set", 0, 0, [.. unit.Select(i => Term(i, o => o.Part == pair.First ? 1 : o.Part == pair.Second ? -1 : 0))]);
            }
        }
    }

    private PlanTerm Term(int need, Func<AllocationOffer, long> amount) => new(Units + need, [0, .. _needs[need].Offers.Select(o => (long?)amount(o))], []);

    private string? SetOf(AllocationOffer offer) => _parts[offer.Part].Set;
}
