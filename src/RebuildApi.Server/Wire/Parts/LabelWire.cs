using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Parts;

/// <summary>The code on a unit or a part.</summary>
/// <param name="Code">What is printed.</param>
/// <param name="Sort"><c>unit</c> or <c>part</c>.</param>
/// <param name="Unit">The unit that it stands on.</param>
/// <param name="Component">The part that it stands on.</param>
/// <param name="Time">When it was given out, UTC.</param>
/// <param name="Href">Where the thing itself is.</param>
/// <param name="Svg">The label as a drawing with its QR code.</param>
/// <param name="Page">The label to print.</param>
public sealed record LabelWire(string Code, string Sort, string? Unit, string? Component, DateTimeOffset Time, string Href, string Svg, string Page)
{
    /// <summary>From the store.</summary>
    public static LabelWire From(PartLabel l) => new(
        l.Code, l.Unit is null ? "part" : "unit", l.Unit, l.Component, l.Time,
        l.Unit is null ? $"/v1/components/{l.Component}" : $"/v1/units/{l.Unit}", $"/v1/labels/{l.Code}.svg", $"/labels/{l.Code}");
}

/// <summary>What a label is wanted for: a unit or a part.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Component">The part.</param>
public sealed record LabelRequest([Id] string? Unit = null, [Id] string? Component = null);
