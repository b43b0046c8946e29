using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Money;

/// <summary>What was agreed for one line, or put on an invoice for it. Several invoice lines may bear on one approved line: a line, its void, its correction.</summary>
/// <param name="Of">The approved line; empty for what no quote had.</param>
/// <param name="Net">Without tax, in whole minor units.</param>
/// <param name="Tax">Tax.</param>
public sealed record Charge(string Of, long Net, long Tax)
{
    /// <summary>With tax.</summary>
    public long Gross => checked(Net + Tax);
}

/// <summary>Whether what was invoiced is what was approved.</summary>
/// <param name="Approved">The approved sum with tax.</param>
/// <param name="Invoiced">What was invoiced with tax, voids taken off.</param>
/// <param name="Ceiling">The largest sum that needs no new approval.</param>
/// <param name="Reasons">Where they differ, line by line; empty when they don't.</param>
public sealed record Reconciliation(long Approved, long Invoiced, long Ceiling, ImmutableArray<Reason> Reasons)
{
    private const string Rule = "money/reconciliation";

    /// <summary>Whether every line was invoiced as approved and nothing else.</summary>
    public bool Agrees => Reasons.IsEmpty;

    /// <summary>Whether the customer must be asked again.</summary>
    public bool NeedsApproval => Invoiced > Ceiling;

    /// <summary>Holds what was invoiced against what was approved.</summary>
    /// <param name="approved">The lines that the work goes by.</param>
    /// <param name="invoiced">What was invoiced, voids and all.</param>
    /// <param name="share">By which share the sum may grow.</param>
    /// <param name="rules">How the shop counts.</param>
    /// <param name="agreed">What was agreed to, when that was a quote before the one that the work goes by.</param>
    public static Reconciliation Of(
        ImmutableArray<Charge> approved, ImmutableArray<Charge> invoiced, decimal share, MoneyRules rules, Agreement? agreed = null)
    {
        var agreement = agreed ?? new Agreement(Sum(approved), share);
        var sums = invoiced.GroupBy(c => c.Of, StringComparer.Ordinal).ToDictionary(g => g.Key, g => (Net: g.Sum(c => c.Net), Tax: g.Sum(c => c.Tax)), StringComparer.Ordinal);
        var known = approved.Select(a => a.Of).ToHashSet(StringComparer.Ordinal);
        var reasons = approved.Select(a => Difference(a, sums, rules)).OfType<Reason>()
            .Concat(sums.Where(s => !known.Contains(s.Key) && s.Value != default).OrderBy(s => s.Key, StringComparer.Ordinal)
                .Select(s => Because.Of("charge-not-approved", Rule, ("line", s.Key), ("invoiced", rules.Words(s.Value.Net + s.Value.Tax)))))
            .ToImmutableArray();
        var sum = Sum(invoiced);
        return new Reconciliation(agreement.Sum, sum, agreement.Ceiling, agreement.NeedsApproval(sum)
            ? reasons.Add(Because.Of("sum-above-agreed", Rule, ("invoiced", rules.Words(sum)), ("ceiling", rules.Words(agreement.Ceiling))))
            : reasons);
    }

    private static Reason? Difference(Charge approved, Dictionary<string, (long Net, long Tax)> sums, MoneyRules rules)
    {
        if (!sums.TryGetValue(approved.Of, out var sum))
            return Because.Of("charge-not-invoiced", Rule, ("line", approved.Of), ("approved", rules.Words(approved.Gross)));
        return sum == (approved.Net, approved.Tax)
            ? null
            : Because.Of("charge-differs", Rule, ("line", approved.Of), ("approved", rules.Words(approved.Gross)), ("invoiced", rules.Words(sum.Net + sum.Tax)));
    }

    private static long Sum(ImmutableArray<Charge> charges) => charges.Aggregate(0L, (sum, c) => checked(sum + c.Gross));
}
