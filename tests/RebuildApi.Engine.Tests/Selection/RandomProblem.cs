using CsCheck;
using RebuildApi.Checkers;
using RebuildApi.Contracts;
using RebuildApi.Engine.Selection;

namespace RebuildApi.Engine.Tests.Selection;

/// <summary>Small random choice problems, and their translation for the checker.</summary>
internal static class RandomProblem
{
    private const long Hundredth = 10_000;
    private static readonly int[] Numerators = [-1, -1, -1, 1, -2, 2];
    private static readonly int[] Denominators = [1, 1, 1, 2, 3];

    private static readonly Gen<SelectionOption> Option = Gen.Select(
        Gen.Long[0, 30], Gen.Int[0, 3], Gen.Long[0, 3].Nullable(), Gen.Long[0, 2],
        (amount, pieces, cost, removed) => new SelectionOption([.. Enumerable.Repeat("piece", pieces)], new Length(amount * Hundredth), cost, new Length(removed)));

    public static Gen<SelectionProblem> Any { get; } =
        from counts in Gen.Int[1, 5].Array[1, 5]
        from choices in Gen.Select(Option.Array[5].Array[counts.Length], options => options.Select((o, i) => new SelectionChoice($"choice-{i}", [.. o.Take(counts[i])])).ToArray())
        from loops in Loop(counts.Length).Array[1, 4]
        select new SelectionProblem([.. loops.Select((l, i) => l with { Id = $"loop-{i}" })], [.. choices]);

    public static CheckedProblem Checked(SelectionProblem problem)
    {
        var dearest = problem.Choices.SelectMany(c => c.Options).Max(o => o.Cost) ?? 0;
        var index = problem.Choices.Select((c, i) => (c.Id, i)).ToDictionary(x => x.Id, x => x.i);
        return new CheckedProblem(
            [.. problem.Loops.Select(l => new CheckedLoop(
                l.Without, Length.NearestToMetres(l.StandardUncertainty).Nanometres, l.GuardedLow, l.GuardedHigh, l.Target,
                [.. l.Terms.Select(t => (index[t.Choice], new Fraction(t.Numerator, t.Denominator)))]))],
            [.. problem.Choices.Select(c => c.Options.Select(o => new CheckedOption(
                o.Amount, o.Members.Length, o.Cost ?? (o.Members.IsEmpty ? 0 : dearest + 1), o.Removed)).ToArray())]);
    }

    private static Gen<SelectionLoop> Loop(int choices) =>
        from without in Gen.Long[-20, 60]
        from u in Gen.Long[0, 3]
        from low in Gen.Long[0, 10]
        from width in Gen.Long[-2, 12]
        from target in Gen.Long[0, 12]
        from sides in Gen.Int[0, 5]
        from terms in Term(choices).Array[0, 4]
        select new SelectionLoop(
            "",
            new Length(without * Hundredth),
            u * Hundredth * 1e-9 / 2,
            sides == 1 ? null : new Length(low * Hundredth),
            sides == 2 ? null : new Length((low + width) * Hundredth),
            new Length((low + target) * Hundredth),
            [.. terms]);

    private static Gen<SelectionTerm> Term(int choices) => Gen.Select(
        Gen.Int[0, choices - 1], Gen.Int[0, 5], Gen.Int[0, 4],
        (choice, numerator, denominator) => new SelectionTerm($"choice-{choice}", Numerators[numerator], Denominators[denominator]));
}
