using System.Collections.Immutable;
using CsCheck;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Tests.Planning;

/// <summary>Small random plans: up to six choices of up to four options, tables over one to three of them, sums with and without doubt.</summary>
internal static class RandomPlan
{
    public static Gen<PlanProblem> Any { get; } =
        from sizes in Gen.Int[1, 4].Array[1, 6]
        from costs in Gen.Long[0, 20].Array[4].Array[sizes.Length]
        from tables in Table(sizes).Array[0, 9]
        from sums in Sum(sizes).Array[0, 3]
        select new PlanProblem(
            [.. sizes.Select((s, i) => new PlanChoice($"choice-{i}", [.. costs[i].Take(s)]))],
            [.. tables.Select((t, i) => t with { Demand = $"table-{i}" })],
            [.. sums.Select((s, i) => s with { Demand = $"sum-{i}" })]);

    private static Gen<PlanTable> Table(int[] sizes) =>
        from width in Gen.Int[1, Math.Min(3, sizes.Length)]
        from order in Gen.Shuffle(Enumerable.Range(0, sizes.Length).ToArray())
        let choices = order.Take(width).ToImmutableArray()
        from costs in Gen.OneOf(Gen.Const(PlanTable.Forbidden), Gen.Const(0L), Gen.Const(0L), Gen.Long[0, 9]).Array[choices.Aggregate(1, (n, c) => n * sizes[c])]
        select new PlanTable("", choices, [.. costs]);

    private static Gen<PlanSum> Sum(int[] sizes) =>
        from width in Gen.Int[1, sizes.Length]
        from order in Gen.Shuffle(Enumerable.Range(0, sizes.Length).ToArray())
        from terms in Term().Array[width]
        from low in Gen.Long[-10, 10]
        from span in Gen.Long[0, 15]
        from sides in Gen.Int[0, 5]
        from guard in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 2])
        from variance in Gen.Double[0, 2]
        select new PlanSum(
            "", sides == 1 ? long.MinValue : low, sides == 2 ? long.MaxValue : low + span,
            [.. terms.Select((t, i) => new PlanTerm(order[i], [.. t.Amounts.Take(sizes[order[i]])], [.. t.Variances.Take(sizes[order[i]])]))], guard, variance);

    private static Gen<(long?[] Amounts, double[] Variances)> Term() =>
        Gen.Select(Gen.OneOf(Gen.Long[-6, 6].Select(a => (long?)a), Gen.Long[-6, 6].Select(a => (long?)a), Gen.Long[-6, 6].Nullable(0.3)).Array[4], Gen.Double[0, 1].Array[4]);
}
