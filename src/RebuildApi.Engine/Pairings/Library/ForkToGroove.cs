using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Pads of a shift fork in the groove of its sleeve.</summary>
internal sealed class ForkToGroove : Template
{
    private static readonly string[] s_wear = ["fresh", "light", "worn", "burnt"];

    public override TemplateDefinition Definition { get; } = new(
        "fork-to-groove",
        "Fork pads to sleeve groove",
        """
        Judges the two faces of a fork's pads. Even light wear goes back. One worn and the other fresh says that the sleeve has been pulling past
        its place, or that the fork is bent: a new fork alone does not mend it. Worn on both sides is a worn fork; burnt pads carried a load they
        were not made for. With a window, the groove's width less the pad's thickness must lie in it.
        """,
        [Role("fork", "the shift fork"), Role("sleeve", "the sleeve whose groove it runs in")],
        [
            Sees("fork", "input-pad", "wear of the pad face toward the input", [.. s_wear]),
            Sees("fork", "output-pad", "wear of the pad face toward the output", [.. s_wear]),
        ],
        [
            MayRead("sleeve", "groove-width", Dimension.Length, "width of the groove; needed with a clearance window"),
            MayRead("fork", "pad-thickness", Dimension.Length, "thickness of the thinner pad; needed with a clearance window"),
        ],
        [Number("clearance-low", Dimension.Length, "least clearance"), Number("clearance-high", Dimension.Length, "most clearance")],
        []);

    public override Assessment Judge(PairingCase parts)
    {
        var checks = new List<Assessment> { Pads(parts, parts.See("fork", "input-pad"), parts.See("fork", "output-pad")) };
        var (low, high) = (parts.Parameter("clearance-low"), parts.Parameter("clearance-high"));
        if ((low ?? high) is not null)
            checks.Add(parts.DifferenceWithin("fork-clearance", ("sleeve", "groove-width"), ("fork", "pad-thickness"), low, high));
        return Assessment.Worst(checks);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        // A new fork mends worn pads; where one pad is worn and the other fresh the cause is elsewhere, and a fork alone is no cure.
        var (input, output) = (parts.See("fork", "input-pad").Value, parts.See("fork", "output-pad").Value);
        if ((input, output) is ("worn", "fresh") or ("fresh", "worn") or ("burnt", _) or (_, "burnt"))
            yield break;
        yield return new Exchange("fit-fork", "Fit a fork with sound pads.",
        [
            parts.Fit("fork", "input-pad", "fresh"), parts.Fit("fork", "output-pad", "fresh"),
            .. parts.FitSecond(("sleeve", "groove-width"), ("fork", "pad-thickness"), parts.Parameter("clearance-low"), parts.Parameter("clearance-high")),
        ]);
    }

    private static Assessment Pads(PairingCase parts, Sight input, Sight output)
    {
        var strange = new[] { input, output }.FirstOrDefault(s => s.Value is { } v && !s_wear.Contains(v));
        if (strange is not null)
            return parts.Strange(strange);
        (string, string)[] told =
        [
            ("position", input.At.Position), ("inputPad", input.Value ?? "unknown"), ("outputPad", output.Value ?? "unknown"),
            ("sleeve", parts.Places["sleeve"].Position),
        ];
        return (input.Value, output.Value) switch
        {
            ("burnt", _) or (_, "burnt") => parts.Breaks("fork-pad-burnt", told),
            ("worn", "fresh") or ("fresh", "worn") => parts.Breaks("fork-one-pad-worn", told),
            ("worn", _) or (_, "worn") => parts.Breaks("fork-worn", told),
            ({ }, { }) => parts.Holds("fork-pads-even", told),
            _ => Assessment.Worst(new[] { input, output }.Where(s => s.Value is null).Select(s => parts.Unknown(s.At))),
        };
    }
}
