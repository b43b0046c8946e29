using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>A relation that must hold between the parts in two or more positions: one of the engine's templates with roles filled in.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>third-engagement</c>.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Template">One of the engine's templates: <c>engagement-form</c>.</param>
/// <param name="Roles">Role to <c>position</c> or <c>position/feature</c>, as the template asks.</param>
/// <param name="Parameters">Numbers that the template asks for.</param>
/// <param name="Options">Words that the template asks for: which attribute, which values.</param>
/// <param name="WhenBroken">The verdict when the relation does not hold.</param>
/// <param name="Severity">What it costs when it does not hold.</param>
/// <param name="Consequence">What then happens, in plain words.</param>
/// <param name="Cures">What mends it.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record PairingRule(
    string Id,
    Text Name,
    string Template,
    IReadOnlyDictionary<string, string> Roles,
    IReadOnlyDictionary<string, Quantity> Parameters,
    IReadOnlyDictionary<string, string> Options,
    Compatibility WhenBroken,
    Severity Severity,
    Text Consequence,
    ImmutableArray<Cure> Cures,
    Source Source);

/// <summary>Something that mends a broken pairing.</summary>
/// <param name="Id">Unique within its rule.</param>
/// <param name="Text">What to do, in plain words.</param>
/// <param name="Sufficient">Whether the steps alone make the pairing compatible.</param>
/// <param name="Steps">The parts to exchange, if the cure is an exchange.</param>
public sealed record Cure(string Id, Text Text, bool Sufficient, ImmutableArray<CureStep> Steps);

/// <summary>Fit, at a position, a part that has an attribute value or a characteristic.</summary>
/// <param name="Position">Where.</param>
/// <param name="Attribute">Which attribute, or none.</param>
/// <param name="Value">Its value, or none.</param>
/// <param name="Characteristic">Which characteristic, or none.</param>
/// <param name="Within">The limits it must lie in, or none.</param>
public sealed record CureStep(string Position, string? Attribute, string? Value, string? Characteristic, Limits? Within);

/// <summary>What a broken pairing costs.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Severity>))]
public enum Severity
{
    /// <summary>Worth knowing.</summary>
    Advisory,

    /// <summary>It wears before its time.</summary>
    Wear,

    /// <summary>It does not do its job.</summary>
    Malfunction,

    /// <summary>A person can be hurt.</summary>
    Danger,
}
