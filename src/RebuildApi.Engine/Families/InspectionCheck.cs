using RebuildApi.Contracts;

namespace RebuildApi.Engine.Families;

/// <summary>Every position has something to inspect, and every class of damage that is looked for has a policy.</summary>
internal static class InspectionCheck
{
    public static void Run(Family family, FamilyReport report)
    {
        foreach (var position in family.Positions)
        {
            var kind = family.Kinds.First(k => k.Id == position.Kind);
            var blind = kind.Characteristics.IsEmpty && kind.Attributes.IsEmpty && kind.DamageClasses.IsEmpty;
            report.Require(!blind, $"positions[{position.Id}]", "nothing-to-inspect", "Nothing can be measured, seen or looked for there.");
        }

        foreach (var kind in family.Kinds)
        {
            foreach (var damage in kind.DamageClasses.Where(d => !family.Damage.Any(p => Fits(p, kind.Id, d))))
                report.Doubt($"kinds[{kind.Id}].damageClasses", "damage-undecided", $"Nothing says what '{damage}' means for it.");
        }
    }

    private static bool Fits(DamagePolicy policy, string kind, string damage) =>
        (policy.Kind == kind || policy.Kind == "*") && (policy.DamageClass == damage || policy.DamageClass == "*");
}
