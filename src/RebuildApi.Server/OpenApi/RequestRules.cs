using System.Reflection;
using System.Text.Json;
using Microsoft.OpenApi;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Requests.Shapes;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RebuildApi.Server.OpenApi;

/// <summary>Tells the rules of request fields, and which fields are required, from the one constructor that also governs how they are read.</summary>
public sealed class RequestRules : ISchemaFilter
{
    /// <inheritdoc/>
    public void Apply(IOpenApiSchema schema, SchemaFilterContext context)
    {
        if (schema is not OpenApiSchema { Properties: { } properties } target || !IsWireRecord(context.Type))
            return;
        foreach (var parameter in context.Type.GetConstructors().MaxBy(c => c.GetParameters().Length)!.GetParameters())
            Describe(target, properties, parameter);
        // What is sent must be known to the last field; what is answered may grow, and carries dryRun when nothing was kept.
        target.AdditionalPropertiesAllowed = !IsSent(context.Type) || target.AdditionalProperties is not null;
    }

    private static bool IsSent(Type type) =>
        type.Name.EndsWith("Request", StringComparison.Ordinal) || type.Name.StartsWith("Sent", StringComparison.Ordinal);

    private static bool IsWireRecord(Type type) =>
        type is { IsClass: true, Namespace: { } space } && space.StartsWith("RebuildApi.Server", StringComparison.Ordinal) && type.GetConstructors().Length > 0;

    private static void Describe(OpenApiSchema schema, IDictionary<string, IOpenApiSchema> properties, ParameterInfo parameter)
    {
        var name = JsonNamingPolicy.CamelCase.ConvertName(parameter.Name!);
        if (!properties.TryGetValue(name, out var property))
            return;
        if (!ShapeBook.IsOptional(parameter))
            (schema.Required ??= new HashSet<string>()).Add(name);
        if (property is not OpenApiSchema described)
            return;
        foreach (var rule in parameter.GetCustomAttributes<FieldRule>())
            rule.Describe(TargetOf(rule, described));
    }

    // A rule about one entry of a list is told on the entries.
    private static OpenApiSchema TargetOf(FieldRule rule, OpenApiSchema described) =>
        rule is not EntriesAttribute && described.Items is OpenApiSchema items ? items : described;
}
