using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>A blocker ring on its cone.</summary>
internal sealed class RingToCone : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "ring-to-cone",
        "Blocker ring to cone",
        """
        Judges a ring on its cone. The grip test comes first: oil the cone, press the ring on by hand and twist; it must lock. A ring that does not
        grip is rejected whatever its gap says: one that stands high has a generous gap and shifts badly, one that sits lower and grips at once is
        right. Then the reserve gap must lie in its window: too small and the ring will soon bottom, too large and ring and cone do not belong
        together. A ring whose attribute cone differs from the gear's has another cone angle or size.
        """,
        [Role("ring", "the blocker ring"), Role("gear", "the gear whose cone it sits on")],
        [
            Sees("ring", "grip", "hand test on the cone", "grips", "slips"),
            MaySee("ring", "cone", "which cone it is made for; seen with the option cone"),
            MaySee("gear", "cone", "which cone it has; seen with the option cone"),
        ],
        [
            MayRead("ring", "reserve-gap", Dimension.Length, "gap from ring to gear, ring pressed home, at three angles or more; needed with a gap window"),
            MayRead("gear", "contact", Dimension.Ratio, "share of the cone that bears by bluing, 0..1; needed with contact-low"),
        ],
        [
            Number("gap-low", Dimension.Length, "least reserve gap"),
            Number("gap-high", Dimension.Length, "most reserve gap"),
            Number("contact-low", Dimension.Ratio, "least share of the cone that bears; 0.7 to 0.8 is common practice, no source"),
        ],
        [Word("cone", "seen: the attribute cone must be alike on ring and gear; not seen when not given", "seen")]);

    public override Assessment Judge(PairingCase parts)
    {
        var checks = new List<Assessment> { Grip(parts) };
        var (low, high) = (parts.Parameter("gap-low"), parts.Parameter("gap-high"));
        if ((low ?? high) is not null)
            checks.Add(parts.ReadingWithin("reserve-gap", "ring", "reserve-gap", low, high));
        if (parts.Parameter("contact-low") is { } share)
            checks.Add(parts.ReadingWithin("cone-contact", "gear", "contact", share, null));
        if (parts.Option("cone") == "seen")
            checks.Add(parts.Alike("cone", ["ring", "gear"]));
        return Assessment.Worst(checks);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        CureStep[] cone = parts.Option("cone") == "seen" && parts.See("gear", "cone").Value is { } value ? [parts.Fit("ring", "cone", value)] : [];
        yield return new Exchange("fit-ring-that-grips", "Fit a ring that grips at once when pressed on by hand.",
        [
            parts.Fit("ring", "grip", "grips"),
            .. parts.FitWithin("ring", "reserve-gap", parts.Parameter("gap-low"), parts.Parameter("gap-high")),
            .. cone,
        ]);
    }

    private static Assessment Grip(PairingCase parts)
    {
        var sight = parts.See("ring", "grip");
        return sight.Value switch
        {
            null => parts.Unknown(sight.At),
            "grips" => parts.Holds("ring-grips", ("position", sight.At.Position)),
            "slips" => parts.Breaks("ring-slips", ("position", sight.At.Position)),
            _ => parts.Strange(sight),
        };
    }
}
