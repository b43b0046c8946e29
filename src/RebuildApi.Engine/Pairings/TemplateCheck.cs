using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Pairings;

/// <summary>Something wrong with how a rule uses its template.</summary>
/// <param name="Code">
/// <c>template-unknown</c>, <c>role-missing</c>, <c>role-unknown</c>, <c>position-unknown</c>, <c>attribute-undeclared</c>,
/// <c>attribute-value-undeclared</c>, <c>characteristic-undeclared</c>, <c>characteristic-dimension</c>, <c>parameter-missing</c>,
/// <c>parameter-unknown</c>, <c>parameter-dimension</c>, <c>option-missing</c>, <c>option-unknown</c>, <c>option-value</c>, <c>cure-undeclared</c>,
/// <c>expression-form</c>, <c>expression-name</c>.
/// </param>
/// <param name="Field">Where in the rule: <c>roles.gear</c>.</param>
/// <param name="Message">In plain English.</param>
public sealed record TemplateProblem(string Code, string Field, string Message);

/// <summary>Checks a rule against its template and its family before anything is judged by it.</summary>
internal static class TemplateCheck
{
    public static ImmutableArray<TemplateProblem> Check(PairingRule rule, FamilyIndex family)
    {
        if (Templates.Find(rule.Template) is not { } template)
            return [new("template-unknown", "template", $"There is no template '{rule.Template}'.")];
        return
        [
            .. Roles(rule, template, family),
            .. template.Attributes.SelectMany(a => Sights(rule, a, family)),
            .. template.Characteristics.SelectMany(c => Sights(rule, c, family)),
            .. Parameters(rule, template),
            .. Options(rule, template),
            .. Templates.Of(rule.Template)!.CheckMore(rule, family),
            .. rule.Cures.SelectMany(c => c.Steps).SelectMany(s => Step(s, family)),
        ];
    }

    private static IEnumerable<TemplateProblem> Roles(PairingRule rule, TemplateDefinition template, FamilyIndex family)
    {
        foreach (var role in template.Roles.Where(r => r.Required && !rule.Roles.ContainsKey(r.Name)))
            yield return new("role-missing", $"roles.{role.Name}", $"The role '{role.Name}' ({role.About}) is not filled.");
        foreach (var (name, place) in rule.Roles)
        {
            if (!template.TakesMoreRoles && template.Roles.All(r => r.Name != name))
                yield return new("role-unknown", $"roles.{name}", $"The template has no role '{name}'.");
            if (!family.Positions.ContainsKey(Place.Parse(place).Position))
                yield return new("position-unknown", $"roles.{name}", $"The family has no position '{Place.Parse(place).Position}'.");
        }
    }

    private static IEnumerable<TemplateProblem> Sights(PairingRule rule, SightDefinition sight, FamilyIndex family)
    {
        var roles = sight.Role == "*" ? rule.Roles : rule.Roles.Where(r => r.Key == sight.Role);
        foreach (var (role, text) in roles)
        {
            var place = Place.Parse(text);
            if (family.KindAt(place.Position) is not { } kind)
                continue;
            var id = rule.Options.GetValueOrDefault(role + "." + sight.Name) ?? (place.Feature is null ? sight.Name : place.Feature + "." + sight.Name);
            var problems = sight.Dimension is { } dimension
                ? Characteristic(kind, id, dimension, sight, role)
                : Attribute(kind, id, sight, role);
            foreach (var problem in problems)
                yield return problem;
        }
    }

    private static IEnumerable<TemplateProblem> Attribute(PartKind kind, string id, SightDefinition sight, string role)
    {
        var attribute = kind.Attributes.FirstOrDefault(a => a.Id == id);
        if (attribute is null && sight.Always)
            yield return new("attribute-undeclared", $"roles.{role}", $"The kind '{kind.Id}' declares no attribute '{id}' ({sight.About}).");
        foreach (var value in attribute?.Values.Select(v => v.Id).Where(v => sight.Values.Length > 0 && !sight.Values.Contains(v)) ?? [])
        {
            yield return new("attribute-value-undeclared", $"roles.{role}",
                $"The attribute '{id}' of '{kind.Id}' may be '{value}', for which the template has no meaning; it knows {string.Join(", ", sight.Values)}.");
        }
    }

    private static IEnumerable<TemplateProblem> Characteristic(PartKind kind, string id, Dimension dimension, SightDefinition sight, string role)
    {
        var characteristic = kind.Characteristics.FirstOrDefault(c => c.Id == id);
        if (characteristic is null && sight.Always)
            yield return new("characteristic-undeclared", $"roles.{role}", $"The kind '{kind.Id}' declares no characteristic '{id}' ({sight.About}).");
        if (characteristic is not null && characteristic.Dimension != dimension)
            yield return new("characteristic-dimension", $"roles.{role}", $"'{id}' of '{kind.Id}' must be one of {dimension}.");
    }

    private static IEnumerable<TemplateProblem> Parameters(PairingRule rule, TemplateDefinition template)
    {
        foreach (var missing in template.Parameters.Where(p => p.Required && !rule.Parameters.ContainsKey(p.Name)))
            yield return new("parameter-missing", $"parameters.{missing.Name}", $"'{missing.Name}' ({missing.About}) is not given.");
        foreach (var (name, value) in rule.Parameters)
        {
            var known = template.Parameters.FirstOrDefault(p => p.Name == name);
            if (known is null && template.TakesMoreParameters)
                continue;
            if (known is null)
                yield return new("parameter-unknown", $"parameters.{name}", $"The template has no parameter '{name}'.");
            else if (known.Dimension != value.Kind && template.Id != CharacteristicsDifferenceId)
                yield return new("parameter-dimension", $"parameters.{name}", $"'{name}' must be one of {known.Dimension}.");
        }
    }

    private static IEnumerable<TemplateProblem> Options(PairingRule rule, TemplateDefinition template)
    {
        foreach (var missing in template.Options.Where(o => o.Required && !rule.Options.ContainsKey(o.Name)))
            yield return new("option-missing", $"options.{missing.Name}", $"'{missing.Name}' ({missing.About}) is not given.");
        foreach (var (name, value) in rule.Options.Where(o => !IsRenaming(o.Key, rule, template)))
        {
            var known = template.Options.FirstOrDefault(o => o.Name == name);
            if (known is null)
                yield return new("option-unknown", $"options.{name}", $"The template has no option '{name}'.");
            else if (known.Values.Length > 0 && value.Split('|').Any(v => !known.Values.Contains(v.Trim())))
                yield return new("option-value", $"options.{name}", $"'{name}' may be {string.Join(", ", known.Values)}.");
        }
    }

    private static bool IsRenaming(string option, PairingRule rule, TemplateDefinition template)
    {
        var point = option.IndexOf('.', StringComparison.Ordinal);
        return point > 0 && rule.Roles.ContainsKey(option[..point])
            && (template.TakesMoreRoles || template.Attributes.Concat(template.Characteristics).Any(s => s.Name == option[(point + 1)..]));
    }

    private static IEnumerable<TemplateProblem> Step(CureStep step, FamilyIndex family)
    {
        if (family.KindAt(step.Position) is not { } kind)
        {
            yield return new("cure-undeclared", "cures", $"A cure names the position '{step.Position}', which the family does not have.");
            yield break;
        }

        if (step.Attribute is { } attribute && !kind.Attributes.Any(a => a.Id == attribute && a.Values.Any(v => v.Id == step.Value)))
            yield return new("cure-undeclared", "cures", $"A cure asks '{attribute}' = '{step.Value}' of '{kind.Id}', which does not declare it.");
        if (step.Characteristic is { } characteristic && kind.Characteristics.All(c => c.Id != characteristic))
            yield return new("cure-undeclared", "cures", $"A cure asks '{characteristic}' of '{kind.Id}', which does not declare it.");
    }

    private const string CharacteristicsDifferenceId = "characteristics-difference";
}
