using System.Collections.Immutable;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>
/// In which order variables are summed out: always the one whose table would be the smallest. Made from the scopes alone, so that one plan serves
/// however the numbers change.
/// </summary>
internal sealed class EliminationPlan
{
    // 2^20 entries of 8 bytes is the largest table worth making; what needs more is refused.
    private const int WidestScope = 20;

    private EliminationPlan(int tables, ImmutableArray<Step> steps, ImmutableArray<int> constants) =>
        (Tables, Steps, Constants) = (tables, steps, constants);

    /// <summary>How many tables there are: those given, then one for each step.</summary>
    public int Tables { get; }

    public ImmutableArray<Step> Steps { get; }

    /// <summary>The tables left without variables; their product is the answer.</summary>
    public ImmutableArray<int> Constants { get; }

    /// <summary>Plans the elimination of everything.</summary>
    /// <exception cref="TooWideException">A table would be too large.</exception>
    public static EliminationPlan Of(IReadOnlyList<ImmutableArray<int>> scopes)
    {
        var open = scopes.Select((scope, table) => (Table: table, Scope: scope)).ToList();
        var steps = ImmutableArray.CreateBuilder<Step>();
        var left = scopes.SelectMany(s => s).ToHashSet();
        while (left.Count > 0)
        {
            var (variable, union) = left.Order().Select(v => (v, Union(open, v))).MinBy(x => x.Item2.Count);
            if (union.Count > WidestScope)
                throw new TooWideException(union.Count);
            var used = open.Where(o => o.Scope.Contains(variable)).ToArray();
            ImmutableArray<int> scope = [variable, .. union.Where(v => v != variable)];
            var result = scopes.Count + steps.Count;
            steps.Add(new Step(scope, [.. used.Select(u => new Input(u.Table, Index(u.Scope, scope)))]));
            open.RemoveAll(o => o.Scope.Contains(variable));
            open.Add((result, scope[1..]));
            left.Remove(variable);
        }

        return new EliminationPlan(scopes.Count + steps.Count, steps.ToImmutable(), [.. open.Select(o => o.Table)]);
    }

    private static SortedSet<int> Union(List<(int Table, ImmutableArray<int> Scope)> open, int variable) =>
        [.. open.Where(o => o.Scope.Contains(variable)).SelectMany(o => o.Scope)];

    // For each state of the whole scope the index into the table: its bits gathered in the table's own order.
    private static ImmutableArray<int> Index(ImmutableArray<int> table, ImmutableArray<int> scope)
    {
        var bits = table.Select(v => scope.IndexOf(v)).ToArray();
        var index = new int[1 << scope.Length];
        for (var state = 0; state < index.Length; state++)
        {
            for (var j = 0; j < bits.Length; j++)
                index[state] |= ((state >> bits[j]) & 1) << j;
        }

        return ImmutableArray.Create(index);
    }

    /// <summary>One variable is summed out: the first of the scope, so that states 2i and 2i + 1 add up to entry i of the result.</summary>
    internal sealed record Step(ImmutableArray<int> Scope, ImmutableArray<Input> Inputs)
    {
        public int States => 1 << Scope.Length;
    }

    /// <summary>A table that a step multiplies in, and where each state of the step's scope lies in it.</summary>
    internal sealed record Input(int Table, ImmutableArray<int> Index);
}

/// <summary>The evidence ties too many things together for an exact answer.</summary>
/// <param name="variables">How many variables one table would have had.</param>
public sealed class TooWideException(int variables)
    : Exception(FormattableString.Invariant($"The symptoms and findings tie {variables} unknowns together; name fewer at once."));
