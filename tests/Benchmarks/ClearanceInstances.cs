using RebuildApi.Contracts;
using RebuildApi.Engine.Selection;

namespace RebuildApi.Benchmarks;

/// <summary>Invented choice problems of stated shapes, the same for the same seed.</summary>
internal static class ClearanceInstances
{
    private const long Hundredth = 10_000;

    /// <summary>Five clearances in a row, twelve sizes each, every ring felt by its neighbour too.</summary>
    public static SelectionProblem FiveByTwelve(int seed)
    {
        var random = new Random(seed);
        var choices = Enumerable.Range(0, 5).Select(i => Rings($"ring-{i}", 12, 5)).ToArray();
        var loops = Enumerable.Range(0, 5).Select(i => Loop(random, i, 0.06, i == 0 ? ["ring-0"] : [$"ring-{i}", $"ring-{i - 1}"], 2.275 * (i == 0 ? 1 : 2)));
        return new SelectionProblem([.. loops], [.. choices]);
    }

    /// <summary>
    /// Ten clearances with a ring of thirty sizes each; neighbours share a washer of thirty sizes in pairs, and three cuts in steps of 0.01 mm up to
    /// 0.50 mm are felt by three or four clearances each: no clearance shares more than two members with others.
    /// </summary>
    public static SelectionProblem TenByThirtyWithCuts(int seed)
    {
        var random = new Random(seed);
        var choices = Enumerable.Range(0, 10).Select(i => Rings($"ring-{i}", 30, 5))
            .Concat(Enumerable.Range(0, 5).Select(i => Rings($"washer-{i}", 30, 5)))
            .Concat(Enumerable.Range(0, 3).Select(i => Cut($"cut-{i}", 50)));
        var loops = Enumerable.Range(0, 10).Select(i => Loop(random, i, 0.04, [$"ring-{i}", $"washer-{i / 2}", $"cut-{i * 3 / 10}"], 2 * 2.725));
        return new SelectionProblem([.. loops], [.. choices]);
    }

    /// <summary>The same with the ring of each clearance felt by the next one instead of washers: nothing is felt by one clearance alone.</summary>
    public static SelectionProblem ChainOfTenWithCuts(int seed)
    {
        var random = new Random(seed);
        var choices = Enumerable.Range(0, 11).Select(i => Rings($"ring-{i}", 30, 5)).Concat(Enumerable.Range(0, 3).Select(i => Cut($"cut-{i}", 50)));
        var loops = Enumerable.Range(0, 10).Select(i => Loop(random, i, 0.04, i % 4 == 1 ? [$"ring-{i}", $"ring-{i + 1}", $"cut-{i / 4}"] : [$"ring-{i}", $"ring-{i + 1}"], 2 * 2.725));
        return new SelectionProblem([.. loops], [.. choices]);
    }

    private static SelectionChoice Rings(string id, int sizes, int step) => new(
        id, [.. Enumerable.Range(0, sizes).Select(i => new SelectionOption([$"{id}-{i}"], new Length((200 + (i * step)) * Hundredth), 100 + i))]);

    private static SelectionChoice Cut(string id, int steps) => new(
        id, [.. Enumerable.Range(0, steps + 1).Select(i => new SelectionOption([], new Length(-i * Hundredth), null, new Length(i * Hundredth)))]);

    private static SelectionLoop Loop(Random random, int i, double windowMm, string[] choices, double middleMm)
    {
        var without = (long)((middleMm + 0.10 + (random.NextDouble() * 0.6) - 0.3) * 1e6);
        var low = Length.Millimetres(0.10m);
        var high = new Length(low.Nanometres + (long)(windowMm * 1e6));
        return new SelectionLoop(
            $"loop-{i}", new Length(without), 4e-6, low, high, new Length((low.Nanometres + high.Nanometres) / 2),
            [.. choices.Select(c => new SelectionTerm(c, -1))]);
    }
}
