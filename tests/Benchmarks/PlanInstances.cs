using System.Collections.Immutable;
using RebuildApi.Engine.Allocation;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Benchmarks;

/// <summary>Invented plans and allocations of stated shapes, the same for the same seed.</summary>
internal static class PlanInstances
{
    /// <summary>Sixty places, five candidates each at 1.00 to 100.00, and 150 pairings each of which forbids three combinations in ten, or so many.</summary>
    public static PlanProblem SixtyByFive(int seed, int inTen = 3)
    {
        var random = new Random(seed);
        var pairs = new HashSet<(int, int)>();
        while (pairs.Count < 150)
        {
            var (a, b) = (random.Next(60), random.Next(60));
            if (a < b)
                pairs.Add((a, b));
        }

        return new PlanProblem(
            [.. Enumerable.Range(0, 60).Select(i => new PlanChoice($"place-{i}", [.. Enumerable.Range(0, 5).Select(_ => (long)random.Next(100, 10_001))]))],
            [.. pairs.Order().Select((p, i) => new PlanTable($"pairing-{i}", [p.Item1, p.Item2], [.. Enumerable.Range(0, 25).Select(_ => random.Next(10) < inTen ? PlanTable.Forbidden : 0)]))],
            []);
    }

    /// <summary>Units of five places each; of the measured parts for a place the nearest in size are offered, at what they are off by.</summary>
    public static AllocationProblem Shelf(int seed, int units, int parts, int nearest)
    {
        var random = new Random(seed);
        var wanted = Enumerable.Range(0, units * 5).Select(_ => random.Next(1_000_000)).ToArray();
        var sizes = Enumerable.Range(0, parts).Select(_ => random.Next(1_000_000)).ToArray();
        var offers = ImmutableArray.CreateBuilder<AllocationOffer>();
        for (var need = 0; need < wanted.Length; need++)
        {
            foreach (var part in Enumerable.Range(0, parts).Where(p => p % 5 == need % 5).OrderBy(p => Math.Abs(sizes[p] - wanted[need])).Take(nearest))
                offers.Add(new AllocationOffer($"part-{part}", $"unit-{need / 5}", $"place-{need % 5}", Math.Abs(sizes[part] - wanted[need])));
        }

        return new AllocationProblem(
            [.. Enumerable.Range(0, units).Select(u => new AllocationUnit($"unit-{u}", [.. Enumerable.Range(0, 5).Select(i => $"place-{i}")]))],
            [.. Enumerable.Range(0, parts).Select(p => new AllocationPart($"part-{p}"))],
            offers.ToImmutable());
    }
}
