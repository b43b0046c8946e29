using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Vintage of parts that must suit each other.</summary>
internal sealed class VintageMatch : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "vintage-match",
        "Vintage of shaft, pilot, case and the rest",
        """
        Judges parts by their vintage: the same on all, or a mixture that the option allowed lists, each as role=vintage pairs joined by +. On
        older gearboxes every combination of gear, sleeve, fork travel and stop is kept together (common practice, no source). Attributes seen on
        the parts come before printed numbers, which are hints only.
        """,
        [Role("first", "a part"), Role("second", "another")],
        [Sees("*", "vintage", "which vintage or casting it is of")],
        [],
        [],
        [Word("allowed", "mixtures that may run: first=early+second=late|first=late+second=early")],
        TakesMoreRoles: true);

    public override Assessment Judge(PairingCase parts) =>
        Combinations.Match(parts, "vintage", parts.List("allowed")) is { } mixture
            ? parts.Holds("combination-allowed", ("attribute", "vintage"), ("combination", mixture))
            : parts.Alike("vintage", parts.Places.Keys);

    public override IEnumerable<Exchange> Exchanges(PairingCase parts) => parts.MakeAlike(["vintage"]);
}
