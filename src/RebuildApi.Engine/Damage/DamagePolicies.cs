using RebuildApi.Contracts;

namespace RebuildApi.Engine.Damage;

/// <summary>Finds the policy that speaks for a piece of damage.</summary>
public static class DamagePolicies
{
    private const string Any = "*";

    /// <summary>The most particular policy that fits: a named kind counts before a named place, place before extent, extent before duty.</summary>
    /// <returns>The policy, or null when none fits.</returns>
    public static DamagePolicy? For(Family family, string kind, DamageSeen damage, string duty) => family.Damage
        .Where(p => p.DamageClass == damage.Class
            && Fits(p.Kind, kind)
            && Fits(p.Where, damage.Place)
            && Fits(p.Extent, damage.Extent)
            && Fits(p.Duty, duty))
        .OrderByDescending(p => p.Kind != Any)
        .ThenByDescending(p => p.Where != Any)
        .ThenByDescending(p => p.Extent != Any)
        .ThenByDescending(p => p.Duty != Any)
        .FirstOrDefault();

    private static bool Fits(string pattern, string? value) => pattern == Any || pattern == value;
}
