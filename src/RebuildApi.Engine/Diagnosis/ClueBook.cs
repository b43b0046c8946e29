using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>The clues that a unit already holds: its complaint, the tests that were tried, what was seen on its parts and what its verdicts say.</summary>
public static class ClueBook
{
    /// <summary>Every clue that is known. What was not looked at, and what is in doubt, says nothing.</summary>
    /// <param name="network">The family's network.</param>
    /// <param name="view">The unit.</param>
    /// <param name="standings">How characteristics and clearances stand to their limits, by their subject; what is open is left out.</param>
    public static ImmutableArray<ClueSeen> Of(CauseNetwork network, UnitView view, IReadOnlyDictionary<string, Standing> standings)
    {
        var symptoms = view.Snapshot.Complaint.Select(network.Of).DistinctBy(c => c.Id).Select(c => new ClueSeen(c, true));
        var tests = (view.Snapshot.Tests ?? [])
            .GroupBy(t => t.Test, StringComparer.Ordinal)
            .Select(same => (Clue: network.Test(same.Key), same.MaxBy(t => t.Taken.At)!.Shown))
            .Where(t => t.Clue is not null)
            .Select(t => new ClueSeen(t.Clue!, t.Shown));
        var signs = network.Signs
            .Select(s => (s.Clue, Present: IsThere(s.Sign, view, standings)))
            .Where(s => s.Present is not null)
            .Select(s => new ClueSeen(s.Clue, s.Present!.Value));
        return [.. symptoms, .. tests, .. signs];
    }

    private static bool? IsThere(Sign sign, UnitView view, IReadOnlyDictionary<string, Standing> standings) => sign switch
    {
        AttributeSign a => Attribute(a, [.. view.At(a.Position).Select(p => view.AttributeOf(p.Component, a.Attribute))]),
        DamageSign d => Damage(d, [.. view.At(d.Position).Select(p => view.FindingsOf(p.Component).Select(f => f.Observation).ToArray())]),
        VerdictSign v => standings.TryGetValue(v.Subject, out var standing) ? Limit(v, standing) : null,
        _ => null,
    };

    private static bool? Attribute(AttributeSign sign, string?[] values)
    {
        if (values.Any(v => v is not null && sign.Values.Contains(v)))
            return true;
        return values.Length > 0 && values.All(v => v is not null) ? false : null;
    }

    // A part that was called sound was looked at all over; other damage says nothing about this one.
    private static bool? Damage(DamageSign sign, Observation[][] parts)
    {
        if (parts.SelectMany(p => p).OfType<DamageSeen>().Any(d => sign.Classes.Contains(d.Class) && (sign.Place == "*" || sign.Place == d.Place)))
            return true;
        return parts.Length > 0 && parts.All(p => p.Any(o => o is Sound) && !p.Any(o => o is DamageSeen)) ? false : null;
    }

    private static bool? Limit(VerdictSign sign, Standing standing) => (sign.Side, standing) switch
    {
        (_, Standing.Within) => false,
        (null, _) => true,
        (_, Standing.Beyond) => null,
        (LimitSide.Below, _) => standing == Standing.Below,
        _ => standing == Standing.Above,
    };
}
