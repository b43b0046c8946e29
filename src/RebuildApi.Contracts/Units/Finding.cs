using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>Something seen on one revision of a part. Never edited, only superseded.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Component">The part.</param>
/// <param name="Revision">The revision it was seen on.</param>
/// <param name="Observation">What was seen.</param>
/// <param name="Note">In the person's own words, if any.</param>
/// <param name="Taken">How, by whom and when.</param>
/// <param name="Supersedes">The finding it corrects, if any.</param>
public sealed record Finding(
    string Id,
    string Component,
    int Revision,
    Observation Observation,
    string? Note,
    Taken Taken,
    string? Supersedes);

/// <summary>What was seen: damage, an attribute, or that the part was inspected and is sound.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "is")]
[JsonDerivedType(typeof(DamageSeen), "damage")]
[JsonDerivedType(typeof(AttributeSeen), "attribute")]
[JsonDerivedType(typeof(Sound), "sound")]
public abstract record Observation
{
    private protected Observation()
    {
    }
}

/// <summary>Damage.</summary>
/// <param name="Class">The standard's class: <c>macropitting</c> (ISO 10825), <c>false-brinelling</c> (ISO 15243).</param>
/// <param name="Extent"><c>slight</c>, <c>moderate</c> or <c>severe</c>.</param>
/// <param name="Place">The feature or side, or none.</param>
public sealed record DamageSeen(string Class, string Extent, string? Place) : Observation;

/// <summary>An attribute.</summary>
/// <param name="Attribute">Which.</param>
/// <param name="Value">Its value, from the closed list.</param>
public sealed record AttributeSeen(string Attribute, string Value) : Observation;

/// <summary>Inspected as the family asks, and no damage found.</summary>
public sealed record Sound : Observation;
