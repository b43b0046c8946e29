using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Pairings;

/// <summary>Parts that stay together.</summary>
internal static class Sets
{
    public static IReadOnlySet<Compatibility> Matched(CheckedCase parts)
    {
        var set = parts.Values.Unit.Family.Sets.FirstOrDefault(s => s.Id == parts.Option("set"));
        (string Position, int Index)[] places = [.. parts.Places.Values.Select(p => (p.Position, p.Index)).Concat((set?.Positions ?? []).Select(p => (p, 1))).Distinct()];
        var bond = set?.Bond ?? parts.Option("bond") switch
        {
            "replace-together" => SetBond.ReplaceTogether,
            "same-individuals-and-index" => SetBond.SameIndividualsAndIndex,
            _ => SetBond.SameIndividuals,
        };
        return places.Length < 2 ? Says.Open : Together(parts, places, bond);
    }

    /// <summary>All came here, or all are exchanged; for the same individuals as one set, and with marks that agree where the bond asks it.</summary>
    public static IReadOnlySet<Compatibility> Together(CheckedCase parts, (string Position, int Index)[] places, SetBond bond)
    {
        var unit = parts.Values.Unit;
        var members = places.Select(p => (Place: p, Part: unit.At(p.Position, p.Index))).ToArray();
        if (members.Any(m => m.Part is null))
            return Says.Open;
        var here = members.Count(m => unit.WasFoundAt(m.Part!, m.Place.Position, m.Place.Index));
        var kept = here == members.Length ? Says.Fine
            : here > 0 ? Says.Just(parts.Broken)
            : bond == SetBond.ReplaceTogether ? Says.Fine
            : Says.Worst(members.Select(m => parts.Holds(unit.AttributeOf(m.Part!, "supplied") switch { "as-set" => true, "single" => false, _ => null })));
        if (bond != SetBond.SameIndividualsAndIndex)
            return kept;
        var marks = members.Select(m => unit.PlacedAt(m.Place.Position, m.Place.Index)!.IndexMark).ToArray();
        return Says.Worst([kept, parts.Holds(marks.Contains(null) ? null : marks.Distinct().Count() == 1)]);
    }
}
