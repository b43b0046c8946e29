using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Two gears that run together.</summary>
internal sealed class MeshPair : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "mesh-pair",
        "Mesh pair",
        """
        Judges whether two rows of running teeth belong together. The family's tooth sets must have the same module, pressure angle and helix, and
        opposite hands. On the parts, the attributes that the rule lists are seen: teeth must be the count of the family's tooth set, hand its
        hand. With keep-together, both are the parts found here, or both are exchanged.
        """,
        [Role("driver", "the driving row, as position/tooth-set"), Role("driven", "the driven row")],
        [
            MaySee("*", "teeth", "number of teeth counted; seen when listed"),
            MaySee("*", "hand", "hand of the helix; seen when listed", "right", "left", "spur"),
        ],
        [],
        [],
        [
            Word("see", "the attributes seen on both parts, of teeth and hand; none when not given", "teeth", "hand"),
            Word("keep-together", "yes: changing one gear demands the other; no when not given", "yes", "no"),
        ]);

    public override Assessment Judge(PairingCase parts)
    {
        if (parts.TeethOf("driver") is not { } driver || parts.TeethOf("driven") is not { } driven)
            return new Assessment(Compatibility.NotAssessed, [parts.Because("mesh-teeth-undeclared")], []);
        var checks = new List<Assessment> { Geometry(parts, driver, driven) };
        foreach (var name in parts.List("see"))
        {
            checks.Add(Seen(parts, "driver", name, driver));
            checks.Add(Seen(parts, "driven", name, driven));
        }

        if (parts.Option("keep-together") == "yes")
            checks.Add(Togetherness.Judge(parts, [parts.Places["driver"], parts.Places["driven"]], SetBond.ReplaceTogether));
        return Assessment.Worst(checks);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        string[] roles = ["driver", "driven"];
        yield return new Exchange(
            "fit-both-gears", $"Change both: {parts.Called("driver")} and {parts.Called("driven")}.", [.. roles.SelectMany(r => Whole(parts, r))]);
    }

    private static IEnumerable<CureStep> Whole(PairingCase parts, string role)
    {
        yield return Pairings.Exchanges.Fit(parts.Places[role].Position);
        foreach (var name in parts.TeethOf(role) is null ? [] : parts.List("see"))
            yield return parts.Fit(role, name, name == "hand" ? HandWords.Of(parts.TeethOf(role)!.Hand) : Checks.Say(parts.TeethOf(role)!.Teeth));
    }

    private static Assessment Geometry(PairingCase parts, ToothSet a, ToothSet b)
    {
        var same = a.NormalModule == b.NormalModule
            && a.NormalPressureAngle.Equals(b.NormalPressureAngle)
            && a.HelixAngle.Equals(b.HelixAngle);
        var opposite = (a.Hand, b.Hand) is (Hand.Right, Hand.Left) or (Hand.Left, Hand.Right) or (Hand.Spur, Hand.Spur);
        (string, string)[] told = [("driver", parts.Rule.Roles["driver"]), ("driven", parts.Rule.Roles["driven"])];
        return same && opposite ? parts.Holds("mesh-geometry-agrees", told) : parts.Breaks(same ? "mesh-hands-alike" : "mesh-geometry-differs", told);
    }

    private static Assessment Seen(PairingCase parts, string role, string name, ToothSet declared) =>
        parts.OneOf(role, name, [name == "hand" ? HandWords.Of(declared.Hand) : Checks.Say(declared.Teeth)]);
}
