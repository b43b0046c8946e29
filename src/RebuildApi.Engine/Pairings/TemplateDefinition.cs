using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings;

/// <summary>
/// What one pairing template asks of a family, as data: a rule is checked against it and documents are made from it.
/// </summary>
/// <param name="Id">Lower case with hyphens: <c>engagement-form</c>.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="About">What it judges and how, in one paragraph.</param>
/// <param name="Roles">The places that take part. A role is filled with <c>position</c> or <c>position/feature</c>.</param>
/// <param name="Attributes">
/// What must be seen on the parts. The id of an attribute is its name, with the role's feature and a point before it when there is one
/// (<c>third-gear/dog</c> and <c>form</c> give <c>dog.form</c>); an option <c>role.name</c> renames it.
/// </param>
/// <param name="Characteristics">What must be read on the parts; named as attributes are.</param>
/// <param name="Parameters">Numbers that the rule gives.</param>
/// <param name="Options">Words that the rule gives. A list is written with <c>|</c> between its values.</param>
/// <param name="TakesMoreRoles">Whether roles of any other name may be added.</param>
/// <param name="TakesMoreParameters">Whether numbers of any other name and dimension may be added.</param>
public sealed record TemplateDefinition(
    string Id,
    string Name,
    string About,
    ImmutableArray<RoleDefinition> Roles,
    ImmutableArray<SightDefinition> Attributes,
    ImmutableArray<SightDefinition> Characteristics,
    ImmutableArray<ParameterDefinition> Parameters,
    ImmutableArray<OptionDefinition> Options,
    bool TakesMoreRoles = false,
    bool TakesMoreParameters = false);

/// <summary>A place that takes part.</summary>
/// <param name="Name">Name of the role.</param>
/// <param name="About">Which part fills it.</param>
/// <param name="Required">Whether a rule must fill it.</param>
public sealed record RoleDefinition(string Name, string About, bool Required = true);

/// <summary>Something seen or read on the part of a role.</summary>
/// <param name="Role">The role; <c>*</c> for every role.</param>
/// <param name="Name">Its name, before the feature is put in front.</param>
/// <param name="About">What it is and when it is needed.</param>
/// <param name="Values">For an attribute, the values that the template knows; empty when any value will do.</param>
/// <param name="Dimension">For a characteristic, what it is a quantity of.</param>
/// <param name="Always">Whether the part's kind must declare it whatever the parameters and options say.</param>
public sealed record SightDefinition(
    string Role,
    string Name,
    string About,
    ImmutableArray<string> Values,
    Dimension? Dimension,
    bool Always);

/// <summary>A number that a rule gives.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Dimension">What it is a quantity of.</param>
/// <param name="About">What it means, and what holds when it is not given.</param>
/// <param name="Required">Whether it must be given.</param>
public sealed record ParameterDefinition(string Name, Dimension Dimension, string About, bool Required = false);

/// <summary>A word or list of words that a rule gives.</summary>
/// <param name="Name">Its name.</param>
/// <param name="About">What it means, and what holds when it is not given.</param>
/// <param name="Values">The words allowed; empty when any will do.</param>
/// <param name="Required">Whether it must be given.</param>
public sealed record OptionDefinition(string Name, string About, ImmutableArray<string> Values, bool Required = false);
