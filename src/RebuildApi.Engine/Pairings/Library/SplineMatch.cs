using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Splines of two parts that slide or sit on each other.</summary>
internal sealed class SplineMatch : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "spline-match",
        "Splines match",
        """
        Judges whether two splined parts fit: tooth count and form must be the same, whichever attributes the rule lists. With a window for the
        side play, the space width of the outer part less the tooth thickness of the inner one must lie in it.
        """,
        [Role("outer", "the part with the internal splines: sleeve, hub, ring"), Role("inner", "the part with the external splines: hub, shaft, gear")],
        [
            MaySee("outer", "teeth", "number of splines"), MaySee("inner", "teeth", "number of splines"),
            MaySee("outer", "form", "form of the splines"), MaySee("inner", "form", "form of the splines"),
        ],
        [
            MayRead("outer", "space-width", Dimension.Length, "space between two splines; needed with a play window"),
            MayRead("inner", "tooth-thickness", Dimension.Length, "thickness of a spline; needed with a play window"),
        ],
        [Number("play-low", Dimension.Length, "least side play"), Number("play-high", Dimension.Length, "most side play")],
        [Word("compare", "the attributes that must be alike, teeth and form when not given")]);

    public override Assessment Judge(PairingCase parts)
    {
        var checks = Compared(parts).Select(n => parts.Alike(n, ["outer", "inner"])).ToList();
        if ((parts.Parameter("play-low"), parts.Parameter("play-high")) is var (low, high) && (low ?? high) is not null)
            checks.Add(parts.DifferenceWithin("spline-play", ("outer", "space-width"), ("inner", "tooth-thickness"), low, high));
        return Assessment.Worst(checks);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts) =>
        parts.Parameter("play-low") is null && parts.Parameter("play-high") is null ? parts.MakeAlike(Compared(parts)) : [];

    private static ImmutableArray<string> Compared(PairingCase parts) =>
        parts.List("compare") is { IsEmpty: false } given ? given : ["teeth", "form"];
}
