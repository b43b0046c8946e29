using System.Collections.Frozen;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Checking;

/// <summary>Everything of a family that one value can be held against: each characteristic at each position, and each clearance.</summary>
public sealed class CheckTable
{
    private readonly FrozenDictionary<string, CheckRule> _rules;
    private readonly FrozenDictionary<string, CheckRule>.AlternateLookup<ReadOnlySpan<char>> _bySpan;

    private CheckTable(FrozenDictionary<string, CheckRule> rules)
    {
        _rules = rules;
        _bySpan = rules.GetAlternateLookup<ReadOnlySpan<char>>();
    }

    /// <summary>The subjects, in order.</summary>
    public IEnumerable<string> Subjects => _rules.Keys.Order(StringComparer.Ordinal);

    /// <summary>The table of a family under a policy; the shop's own limits stand before the family's.</summary>
    public static CheckTable Of(FamilyIndex family, Policy policy) =>
        new(Characteristics(family, policy).Concat(Clearances(family, policy)).ToFrozenDictionary(r => r.Subject, StringComparer.Ordinal));

    /// <summary>The rule of a subject, or null when there are no limits for it.</summary>
    public CheckRule? Find(ReadOnlySpan<char> subject) => _bySpan.TryGetValue(subject, out var rule) ? rule : null;

    private static IEnumerable<CheckRule> Characteristics(FamilyIndex family, Policy policy) =>
        from position in family.Family.Positions
        from characteristic in family.Kinds[position.Kind].Characteristics
        let at = new Address(position.Id, characteristic.Id)
        let limits = Own(at.ToString(), policy) ?? family.ServiceLimitsAt(at)
        where limits is not null
        select CheckRule.Of(at.ToString(), limits, policy.For(characteristic.Criticality));

    private static IEnumerable<CheckRule> Clearances(FamilyIndex family, Policy policy) =>
        family.Family.Loops.Select(l => CheckRule.Of(l.Id, Own(l.Id, policy) ?? l.Window, policy.For(l.Criticality)));

    private static Limits? Own(string subject, Policy policy) => policy.Limits.FirstOrDefault(l => l.Subject == subject)?.Limits;
}
