using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>What lines a blocker ring against the oil it runs in.</summary>
internal sealed class LiningAgainstOil : Template
{
    private static readonly string[] s_linings = ["yellow-metal", "sprayed", "paper", "carbon", "sintered"];
    private static readonly string[] s_additives = ["none", "mild", "extreme-pressure", "friction-modified"];

    public override TemplateDefinition Definition { get; } = new(
        "lining-against-oil",
        "Ring lining against oil",
        """
        Judges the friction pair of ring and oil. Sulfur-phosphorus extreme-pressure oils can corrode yellow metal when hot. Friction modifiers, as
        in limited-slip additives, lower the friction and bring clash with any lining. Paper, carbon and sintered linings want the oil that their
        maker names: when the option named lists its grades and the oil is of one, they are right, else it is a condition (common practice, no
        source). The oil is a position of the family, so that what is filled is recorded with the unit.
        """,
        [Role("ring", "the blocker ring"), Role("oil", "the oil to be filled, as a position")],
        [
            Sees("ring", "lining", "what lines the ring", [.. s_linings]),
            Sees("oil", "additive", "what the oil is dosed with", [.. s_additives]),
            MaySee("oil", "grade", "its grade; seen with the option named"),
        ],
        [],
        [],
        [Word("named", "grades that the maker of the lining names")]);

    public override Assessment Judge(PairingCase parts)
    {
        var (lining, additive) = (parts.See("ring", "lining"), parts.See("oil", "additive"));
        if (lining.Value is { } l && !s_linings.Contains(l))
            return parts.Strange(lining);
        if (additive.Value is { } a && !s_additives.Contains(a))
            return parts.Strange(additive);
        if (additive.Value == "friction-modified")
            return parts.Breaks("oil-friction-modified", ("ring", lining.At.Position));
        var unknown = new[] { lining, additive }.Where(s => s.Value is null).Select(s => parts.Unknown(s.At)).ToArray();
        return unknown.Length > 0 ? Assessment.Worst(unknown) : Known(parts, lining, additive);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        foreach (var additive in s_additives[..3])
        {
            CureStep[] grade = parts.List("named") is { IsEmpty: false } named ? [parts.Fit("oil", "grade", named[0])] : [];
            yield return new Exchange($"fill-{additive}", $"Fill an oil with {additive} additives.", [parts.Fit("oil", "additive", additive), .. grade]);
        }
    }

    private static Assessment Known(PairingCase parts, Sight lining, Sight additive)
    {
        (string, string)[] told = [("ring", lining.At.Position), ("lining", lining.Value!), ("additive", additive.Value!)];
        return (lining.Value, additive.Value) switch
        {
            ("yellow-metal", "extreme-pressure") => parts.Breaks("oil-corrodes-yellow-metal", told),
            ("yellow-metal" or "sprayed", _) => parts.Holds("oil-suits-lining", told),
            _ when parts.List("named") is { IsEmpty: false } named => parts.OneOf("oil", "grade", named),
            _ => parts.OnCondition("oil-as-lining-maker-names", told),
        };
    }
}
