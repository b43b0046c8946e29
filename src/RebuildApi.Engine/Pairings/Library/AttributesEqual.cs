using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Any attribute that must be the same on several parts.</summary>
internal sealed class AttributesEqual : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "attributes-equal",
        "Attributes alike",
        "Judges one attribute that must have the same value in every role. An option role.attribute names it where a part calls it otherwise.",
        [Role("first", "a part"), Role("second", "another")],
        [],
        [],
        [],
        [new OptionDefinition("attribute", "name of the attribute", [], Required: true)],
        TakesMoreRoles: true);

    public override Assessment Judge(PairingCase parts) =>
        parts.Option("attribute") is { Length: > 0 } name ? parts.Alike(name, parts.Places.Keys) : Assessment.Worst([]);

    public override IEnumerable<Exchange> Exchanges(PairingCase parts) =>
        parts.Option("attribute") is { Length: > 0 } name ? parts.MakeAlike([name]) : [];
}
