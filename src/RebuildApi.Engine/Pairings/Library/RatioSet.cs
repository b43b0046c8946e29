using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Gears that make one chain of ratios.</summary>
internal sealed class RatioSet : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "ratio-set",
        "Ratio set",
        """
        Judges whether gears belong to one set of ratios: the attribute ratio-set must be the same on all. Mixed sets give a wrong ratio in one
        gear, or run at the wrong centres.
        """,
        [Role("first", "a gear or cluster"), Role("second", "another")],
        [Sees("*", "ratio-set", "which set of ratios it is of")],
        [],
        [],
        [],
        TakesMoreRoles: true);

    public override Assessment Judge(PairingCase parts) => parts.Alike("ratio-set", parts.Places.Keys);

    public override IEnumerable<Exchange> Exchanges(PairingCase parts) => parts.MakeAlike(["ratio-set"]);
}
