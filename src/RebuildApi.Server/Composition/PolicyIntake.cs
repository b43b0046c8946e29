using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition.Stages;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Composition;

/// <summary>Reads the shop's policy, and holds it against the families that are loaded.</summary>
public sealed class PolicyIntake(FamilyBook families)
{
    /// <summary>The policy, its version still open; what is wrong is complained of.</summary>
    public Policy Read(PolicyRequest sent, Complaints complaints)
    {
        var rules = sent.Rules ?? [];
        for (var i = 0; i < rules.Length; i++)
            Check(rules, i, complaints);
        var limits = (sent.Limits ?? []).Select((l, i) => Limit(l, Pointer.Entry("/limits", i), complaints)).OfType<ShopLimit>().ToImmutableArray();
        RequireOnce(limits, complaints);
        return new Policy("", sent.Decision, (double)sent.Probability, sent.Duty, limits)
        {
            Overdue = sent.Overdue,
            ByFamily = NoneIfEmpty([.. rules.Where(r => r.Criticality is null && r.Family is not null).Select(r => new FamilyRule(r.Family!, r.Decision, (double)r.Probability))]),
            ByCriticality = NoneIfEmpty([.. rules.Where(r => r.Criticality is not null).Select(OfCriticality)]),
        };
    }

    /// <summary>The requirements that may be left out over a signature; null when none may.</summary>
    public static ImmutableArray<string>? Exceptions(PolicyRequest sent, Complaints complaints)
    {
        foreach (var (id, i) in (sent.Exceptions ?? []).Select((e, i) => (e, i)).Where(x => !Gates.Exceptable.Contains(x.e)))
            complaints.AddUnknown(Pointer.Entry("/exceptions", i), FieldProblems.NotAllowed, $"There is no exception to {id}.", id, Gates.Exceptable);
        return sent.Exceptions is { IsEmpty: false } given ? [.. given.Distinct(StringComparer.Ordinal)] : null;
    }

    private static CriticalityRule OfCriticality(PolicyRuleRequest r) => new(r.Criticality!.Value, r.Decision, (double)r.Probability) { Family = r.Family };

    private static ImmutableArray<T>? NoneIfEmpty<T>(ImmutableArray<T> rules) => rules.IsEmpty ? null : rules;

    private void Check(ImmutableArray<PolicyRuleRequest> rules, int index, Complaints complaints)
    {
        var (rule, pointer) = (rules[index], Pointer.Entry("/rules", index));
        if (rule is { Family: null, Criticality: null })
            complaints.Add(pointer, FieldProblems.Contradiction, "A rule is meant for a family, a criticality or both; the general rule stands beside the list.");
        if (rule.Family is { } family)
            _ = Family(family, pointer + "/family", complaints);
        if (rules.Take(index).Any(r => r.Family == rule.Family && r.Criticality == rule.Criticality))
            complaints.Add(pointer, FieldProblems.DuplicateField, "Two rules are meant for the same.");
    }

    private ShopLimit? Limit(ShopLimitRequest sent, string pointer, Complaints complaints)
    {
        if (Family(sent.Family, pointer + "/family", complaints) is not { } family)
            return null;
        if (DimensionOf(sent.Subject, family) is not { } dimension)
        {
            var known = family.Loops.Keys.Concat(family.Family.Positions.SelectMany(p => family.Kinds[p.Kind].Characteristics.Select(c => $"{p.Id}/{c.Id}")));
            complaints.AddUnknown(pointer + "/subject", FieldProblems.UnknownSubject, $"{sent.Family} has no {sent.Subject}.", sent.Subject, [.. known]);
            return null;
        }

        var before = complaints.Count;
        var (low, high) = (Points.Maybe(sent.Low, dimension, pointer + "/low", complaints), Points.Maybe(sent.High, dimension, pointer + "/high", complaints));
        var target = Points.Maybe(sent.Target, dimension, pointer + "/target", complaints);
        if (complaints.Count > before)
            return null;
        try
        {
            var limits = new Limits(low, high, target, new Source(SourceKind.Judgement, sent.Source));
            if (IsSafety(sent.Subject, family) && IsWider(limits, FamilyLimits(sent.Subject, family)))
                complaints.Add(pointer, FieldProblems.OutOfRange, $"A person can be hurt by {sent.Subject}: the shop's own window may be narrower than the family's, not wider.", sent.Subject);
            return new ShopLimit(sent.Subject, limits) { Family = sent.Family };
        }
        catch (ArgumentException)
        {
            complaints.Add(pointer, FieldProblems.OutOfRange, "A window has at least one end and is not upside down: low, target, high.");
            return null;
        }
    }

    private static bool IsSafety(string subject, FamilyIndex family) =>
        (family.Loops.GetValueOrDefault(subject)?.Criticality ?? (Address.TryParse(subject) is { } at ? family.CharacteristicAt(at)?.Criticality : null)) == Criticality.SafetyCritical;

    private static Limits? FamilyLimits(string subject, FamilyIndex family) =>
        family.Loops.GetValueOrDefault(subject)?.Window ?? (Address.TryParse(subject) is { } at ? family.ServiceLimitsAt(at) : null);

    private static bool IsWider(Limits own, Limits? family) =>
        (family?.Low is { } low && !(own.Low?.InSi >= low.InSi)) || (family?.High is { } high && !(own.High?.InSi <= high.InSi));

    private static void RequireOnce(ImmutableArray<ShopLimit> limits, Complaints complaints)
    {
        foreach (var twice in limits.GroupBy(l => (l.Family, l.Subject)).Where(g => g.Count() > 1))
            complaints.Add("/limits", FieldProblems.DuplicateField, $"{twice.Key.Subject} of {twice.Key.Family} has limits twice.", twice.Key.Subject);
    }

    private static Dimension? DimensionOf(string subject, FamilyIndex family)
    {
        if (family.Loops.ContainsKey(subject))
            return Dimension.Length;
        return Address.TryParse(subject) is { } at ? family.CharacteristicAt(at)?.Dimension : null;
    }

    private FamilyIndex? Family(string id, string pointer, Complaints complaints)
    {
        var family = families.Find(id);
        if (family is null)
            complaints.AddUnknown(pointer, Problems.UnknownFamily, $"There is no family {id}.", id, [.. families.All.Select(f => f.Family.Version.Id)]);
        return family;
    }
}
