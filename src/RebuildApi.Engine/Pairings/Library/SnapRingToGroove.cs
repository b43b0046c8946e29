using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>A snap ring in its groove.</summary>
internal sealed class SnapRingToGroove : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "snap-ring-to-groove",
        "Snap ring to groove",
        """
        Judges a snap ring: as made and not ground to fit, for a ring that someone ground is replaced and its cause looked for. When the option
        section is given, flat, bevelled or wire as the groove wants. With a window, groove width less ring thickness must lie in it. With a
        facing, its bevel points where it must.
        """,
        [Role("ring", "the snap ring"), MaybeRole("groove", "the part with the groove")],
        [
            Sees("ring", "surface", "whether it is as made or ground by someone", "as-made", "ground"),
            MaySee("ring", "section", "shape of its section; seen with the option section"),
        ],
        [
            MayRead("groove", "groove-width", Dimension.Length, "width of the groove; needed with a play window"),
            MayRead("ring", "thickness", Dimension.Length, "thickness of the ring; needed with a play window"),
        ],
        [Number("play-low", Dimension.Length, "least play of the ring in its groove"), Number("play-high", Dimension.Length, "most play")],
        [
            Word("section", "the sections allowed; not seen when not given"),
            Word("facing", "where the bevel or mark must point; not judged when not given", "input", "output"),
        ]);

    public override Assessment Judge(PairingCase parts)
    {
        var checks = new List<Assessment> { Surface(parts) };
        if (parts.List("section") is { IsEmpty: false } sections)
            checks.Add(parts.OneOf("ring", "section", sections));
        var (low, high) = (parts.Parameter("play-low"), parts.Parameter("play-high"));
        if (parts.Has("groove") && (low ?? high) is not null)
            checks.Add(parts.DifferenceWithin("ring-in-groove", ("groove", "groove-width"), ("ring", "thickness"), low, high));
        if (parts.Option("facing") is { } facing)
            checks.Add(Facings.Judge(parts, "ring", facing));
        return Assessment.Worst(checks);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        CureStep[] section = parts.List("section") is { IsEmpty: false } sections ? [parts.Fit("ring", "section", sections[0])] : [];
        var thickness = parts.Has("groove")
            ? parts.FitSecond(("groove", "groove-width"), ("ring", "thickness"), parts.Parameter("play-low"), parts.Parameter("play-high"))
            : [];
        yield return new Exchange("fit-ring-as-made", "Fit a ring as it was made.", [parts.Fit("ring", "surface", "as-made"), .. section, .. thickness]);
    }

    private static Assessment Surface(PairingCase parts)
    {
        var sight = parts.See("ring", "surface");
        return sight.Value switch
        {
            null => parts.Unknown(sight.At),
            "as-made" => parts.Holds("snap-ring-as-made", ("position", sight.At.Position)),
            "ground" => parts.Breaks("snap-ring-ground", ("position", sight.At.Position)),
            _ => parts.Strange(sight),
        };
    }
}
