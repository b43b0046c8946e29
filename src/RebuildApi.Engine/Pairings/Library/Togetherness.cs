using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Whether parts that belong together are still together.</summary>
internal static class Togetherness
{
    /// <summary>Judges the parts in some places by a bond.</summary>
    public static Assessment Judge(PairingCase parts, IReadOnlyList<Place> places, SetBond bond)
    {
        var members = places.Select(p => new Member(p, PartAt(parts, p))).ToArray();
        var absent = members.Where(m => m.Part is null).Select(m => m.Place.Position).ToArray();
        if (absent.Length > 0)
            return new Assessment(Compatibility.NotAssessed, [.. absent.Select(p => parts.Because("part-missing", ("position", p)))], []);
        var together = WasTogether(parts, members, bond);
        return bond == SetBond.SameIndividualsAndIndex ? Assessment.Worst([together, Marks(parts, members)]) : together;
    }

    private static Assessment WasTogether(PairingCase parts, Member[] members, SetBond bond)
    {
        var foundHere = members.Where(m => IsFoundHere(parts, m)).ToArray();
        if (foundHere.Length == members.Length)
            return parts.Holds("set-together", ("positions", Names(members)));
        if (foundHere.Length > 0)
        {
            return parts.Breaks(
                "set-split",
                ("kept", Names(foundHere)),
                ("exchanged", Names(members.Except(foundHere))));
        }

        return bond == SetBond.ReplaceTogether
            ? parts.Holds("set-exchanged", ("positions", Names(members)))
            : Assessment.Worst(members.Select(m => Supplied(parts, m)));
    }

    private static Assessment Supplied(PairingCase parts, Member member)
    {
        var sight = new Sight(new Address(member.Place.Position, "supplied"), parts.View.AttributeOf(member.Part!.Component, "supplied"));
        return sight.Value switch
        {
            "as-set" => parts.Holds("set-supplied", ("position", member.Place.Position)),
            "single" => parts.Breaks("set-supplied-single", ("position", member.Place.Position)),
            null => parts.Unknown(sight.At),
            _ => parts.Strange(sight),
        };
    }

    private static Assessment Marks(PairingCase parts, Member[] members)
    {
        var unmarked = members.Where(m => m.Part!.Placement.IndexMark is null).ToArray();
        if (unmarked.Length > 0)
            return Assessment.Worst(unmarked.Select(m => parts.Unknown(new Address(m.Place.Position, "index-mark"))));
        var marks = members.Select(m => m.Part!.Placement.IndexMark).Distinct().ToArray();
        return marks.Length == 1
            ? parts.Holds("set-marks-agree", ("mark", marks[0]!))
            : parts.Breaks("set-marks-differ", ("marks", string.Join(", ", marks)));
    }

    private static bool IsFoundHere(PairingCase parts, Member member) => parts.View.Snapshot.Placements.Any(p =>
        p.Role == PlacementRole.Found && p.Position == member.Place.Position && p.Index == member.Place.Index
        && p.Component == member.Part!.Component.Id);

    private static PlacedComponent? PartAt(PairingCase parts, Place place) =>
        parts.View.At(place.Position).FirstOrDefault(p => p.Placement.Index == place.Index);

    private static string Names(IEnumerable<Member> members) => string.Join(", ", members.Select(m => m.Place.Position));

    private sealed record Member(Place Place, PlacedComponent? Part);
}
