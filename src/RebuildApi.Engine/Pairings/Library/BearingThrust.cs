using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Type of a bearing against the thrust it must carry.</summary>
internal sealed class BearingThrust : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "bearing-thrust",
        "Bearing type against thrust",
        """
        Judges whether a bearing can hold its shaft endways. Helical gears thrust both ways, one way on drive and the other on the overrun.
        The ordinary deep-groove type takes thrust both ways. A filling-slot bearing has more balls but lower shoulders and a slot that the balls
        run over under thrust: about one third of the thrust capacity. Angular-contact and tapered bearings take one direction and need a mate.
        Cylindrical rollers and needles take none.
        """,
        [
            Role("bearing", "the bearing that locates the shaft"),
            MaybeRole("gear", "a gear of the shaft: helical teeth mean thrust both ways"),
            MaybeRole("mate", "the bearing that takes the other direction"),
        ],
        [
            Sees("bearing", "type", "type of the bearing", [.. s_types]),
            Sees("mate", "type", "type of its mate", [.. s_types]),
        ],
        [],
        [],
        [Word("thrust", "the thrust it must carry; both when the gear is helical, else none, when not given", "both", "one", "none")]);

    private static readonly string[] s_types = ["deep-groove", "filling-slot", "angular-contact", "tapered", "cylindrical", "needle"];

    public override Assessment Judge(PairingCase parts)
    {
        var sight = parts.See("bearing", "type");
        if (sight.Value is null)
            return parts.Unknown(sight.At);
        var thrust = parts.Option("thrust") ?? (parts.IsHelical("gear") ? "both" : "none");
        (string, string)[] told = [("position", sight.At.Position), ("type", sight.Value), ("thrust", thrust)];
        return (sight.Value, thrust) switch
        {
            (var type, _) when !s_types.Contains(type) => parts.Strange(sight),
            (_, "none") => parts.Holds("bearing-no-thrust", told),
            ("deep-groove", _) => parts.Holds("bearing-takes-thrust", told),
            ("filling-slot", _) => parts.Breaks("bearing-filling-slot", told),
            ("angular-contact" or "tapered", "one") => parts.Holds("bearing-takes-thrust", told),
            ("angular-contact" or "tapered", _) => Mated(parts, told),
            _ => parts.Breaks("bearing-takes-no-thrust", told),
        };
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts) =>
        [new Exchange("fit-deep-groove", "Fit the ordinary deep-groove bearing.", [parts.Fit("bearing", "type", "deep-groove")])];

    private static Assessment Mated(PairingCase parts, (string, string)[] told)
    {
        if (!parts.Has("mate"))
            return parts.Breaks("bearing-needs-mate", told);
        var mate = parts.See("mate", "type");
        return mate.Value switch
        {
            null => parts.Unknown(mate.At),
            "angular-contact" or "tapered" => parts.Holds("bearing-pair-takes-thrust", told),
            "deep-groove" => parts.Holds("bearing-pair-takes-thrust", told),
            _ => parts.Breaks("bearing-needs-mate", told),
        };
    }
}
