using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>A sort of part. A countergear is one kind with several tooth sets; a stock part has a kind and no position.</summary>
/// <param name="Id">Referred to by positions, series, operations and policies.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Characteristics">What can be measured on it.</param>
/// <param name="Attributes">What can be seen on it, each from a closed list.</param>
/// <param name="ToothSets">Its running gear teeth; empty for parts without.</param>
/// <param name="DamageClasses">The damage to look for, by the standard's class; inspecting means ruling these out or naming them.</param>
/// <param name="Material">What it is made of, or none when expansion does not matter.</param>
/// <param name="SingleUse">Whether it is always replaced by a new one.</param>
public sealed record PartKind(
    string Id,
    Text Name,
    ImmutableArray<Characteristic> Characteristics,
    ImmutableArray<AttributeDefinition> Attributes,
    ImmutableArray<ToothSet> ToothSets,
    ImmutableArray<string> DamageClasses,
    string? Material,
    bool SingleUse);
