using System.Collections.Immutable;
using CsCheck;
using RebuildApi.Engine.Allocation;

namespace RebuildApi.Engine.Tests.Allocation;

/// <summary>Many units, few parts. Against plain enumeration (computed here, no source).</summary>
public sealed class AllocatorTests
{
    private static readonly Gen<AllocationProblem> s_any =
        from units in Gen.Int[1, 3]
        from needs in Gen.Int[0, 2].Array[units]
        from parts in Gen.Int[1, 4]
        from reserved in Gen.Int[-6, units - 1].Array[parts]
        from sets in Gen.Int[-3, 1].Array[parts]
        from offered in Gen.OneOf(Gen.Const(-1), Gen.Int[0, 9], Gen.Int[0, 9]).Array[parts * units * 2]
        select new AllocationProblem(
            [.. needs.Select((n, u) => new AllocationUnit($"unit-{u}", [.. Enumerable.Range(0, n).Select(i => $"place-{i}")]))],
            [.. Enumerable.Range(0, parts).Select(p => new AllocationPart($"part-{p}", reserved[p] < 0 ? null : $"unit-{reserved[p]}", sets[p] < 0 ? null : $"set-{sets[p]}"))],
            [.. from p in Enumerable.Range(0, parts) from u in Enumerable.Range(0, units) from i in Enumerable.Range(0, needs[u])
                let cost = offered[(((p * units) + u) * 2) + i]
                where cost >= 0
                select new AllocationOffer($"part-{p}", $"unit-{u}", $"place-{i}", cost)]);

    [Fact]
    public void As_many_units_are_completed_as_enumeration_can_and_as_cheaply() => s_any.Sample(
        problem =>
        {
            var answer = Allocator.Allocate(problem);

            return answer.IsProven && (answer.Completed.Length, answer.Cost) == Best(problem) && answer.Cost == answer.Assigned.Sum(a => a.Cost);
        },
        iter: 3000);

    [Fact]
    public void Each_part_goes_to_one_place_its_own_unit_and_with_its_set() => s_any.Sample(
        problem =>
        {
            var assigned = Allocator.Allocate(problem).Assigned;

            return assigned.Select(a => a.Part).Distinct().Count() == assigned.Length && IsAllowed(problem, [.. assigned]);
        },
        iter: 1000);

    [Fact]
    public void Of_two_units_that_want_one_ring_one_is_completed_and_the_other_says_what_it_lacks()
    {
        var answer = Allocator.Allocate(new AllocationProblem(
            [new AllocationUnit("a", ["ring", "gear"]), new AllocationUnit("b", ["ring"])],
            [new AllocationPart("r1"), new AllocationPart("g1")],
            [new AllocationOffer("r1", "a", "ring", 5), new AllocationOffer("r1", "b", "ring", 7), new AllocationOffer("g1", "a", "gear", 1)]));

        Assert.Equal("a", Assert.Single(answer.Completed));
        Assert.Equal("ring", Assert.Single(Assert.Single(answer.Misses).Lacking));
        Assert.Equal(("ring", "b"), (Assert.Single(answer.Purchases).Place, answer.Purchases[0].Units.Single()));
    }

    [Fact]
    public void When_every_unit_can_be_completed_each_kind_of_place_is_assigned_by_itself()
    {
        var answer = Allocator.Allocate(new AllocationProblem(
            [new AllocationUnit("a", ["ring", "gear"]), new AllocationUnit("b", ["ring"])],
            [new AllocationPart("r1"), new AllocationPart("r2"), new AllocationPart("g1")],
            [new AllocationOffer("r1", "a", "ring", 5), new AllocationOffer("r2", "a", "ring", 6), new AllocationOffer("r1", "b", "ring", 1), new AllocationOffer("g1", "a", "gear", 1)]));

        Assert.Equal("allocation-split", answer.Reasons.Single().Code);
        Assert.Equal(8, answer.Cost);
    }

    private static (int Units, long Cost) Best(AllocationProblem problem) =>
        Ways(problem, 0, []).Where(w => IsAllowed(problem, w)).Select(w => (Units: Completed(problem, w), Cost: w.Sum(o => o.Cost), Way: w))
            .Where(w => w.Units >= 0).OrderByDescending(w => w.Units).ThenBy(w => w.Cost).Select(w => (w.Units, w.Cost)).First();

    private static IEnumerable<AllocationOffer[]> Ways(AllocationProblem problem, int part, AllocationOffer[] so) => part == problem.Parts.Length
        ? [so]
        : Ways(problem, part + 1, so).Concat(problem.Offers.Where(o => o.Part == problem.Parts[part].Id && !so.Any(s => s.Unit == o.Unit && s.Place == o.Place))
            .SelectMany(o => Ways(problem, part + 1, [.. so, o])));

    /// <summary>Units all of whose needs are met; −1 when a unit is met in part, for then parts lie in a unit that is not completed.</summary>
    private static int Completed(AllocationProblem problem, AllocationOffer[] way)
    {
        var counts = problem.Units.Select(u => (u.Needs.Length, Met: way.Count(o => o.Unit == u.Id))).ToArray();
        return counts.Any(c => c.Met > 0 && c.Met < c.Length) ? -1 : counts.Count(c => c.Met == c.Length);
    }

    private static bool IsAllowed(AllocationProblem problem, AllocationOffer[] way)
    {
        var unitOf = way.ToDictionary(o => o.Part, o => o.Unit);
        return problem.Parts.All(p => !unitOf.TryGetValue(p.Id, out var unit) || p.ReservedFor is null || p.ReservedFor == unit)
            && problem.Parts.Where(p => p.Set is not null).GroupBy(p => p.Set).All(set => set.Select(p => unitOf.GetValueOrDefault(p.Id)).Distinct().Count() == 1);
    }
}
