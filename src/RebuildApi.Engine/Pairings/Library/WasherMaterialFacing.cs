using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Material of a thrust washer and which way round it sits.</summary>
internal sealed class WasherMaterialFacing : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "washer-material-facing",
        "Thrust washer material and facing",
        """
        Judges a thrust washer's material against those allowed, and its facing: the grooved face goes toward the gear. A material under choice may
        run, as a person's recorded choice with its reason: sound old metal washers may be better than new polymer ones, which is a choice and not
        a rule (common practice, no source).
        """,
        [Role("washer", "the thrust washer")],
        [Sees("washer", "material", "what it is made of")],
        [],
        [],
        [
            Word("materials", "the materials allowed"),
            Word("choice", "materials that may run as a recorded choice"),
            Word("facing", "where the marked or grooved face must point; not judged when not given", "input", "output"),
        ],
        TakesMoreRoles: true);

    public override Assessment Judge(PairingCase parts)
    {
        var checks = new List<Assessment> { Material(parts) };
        if (parts.Option("facing") is { } facing)
            checks.Add(Facings.Judge(parts, "washer", facing));
        return Assessment.Worst(checks);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts) => parts.List("materials")
        .Select(m => new Exchange($"fit-{m}-washer", $"Fit a washer of {m}.", [parts.Fit("washer", "material", m)]));

    private static Assessment Material(PairingCase parts)
    {
        var sight = parts.See("washer", "material");
        return sight.Value is { } material && parts.List("choice").Contains(material)
            ? parts.OnCondition("washer-recorded-choice", ("position", sight.At.Position), ("material", material))
            : parts.OneOf("washer", "material", parts.List("materials"));
    }
}
