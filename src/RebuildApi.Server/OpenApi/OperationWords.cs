using System.Collections.Frozen;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using RebuildApi.Server.Access;
using RebuildApi.Server.Endpoints;
using RebuildApi.Server.Requests;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RebuildApi.Server.OpenApi;

/// <summary>Adds to each operation what its route declares: parameters of path, query and header, and an example of its body.</summary>
public sealed class OperationWords : IOperationFilter
{
    private static readonly FrozenDictionary<string, string> PathWords = new Dictionary<string, string>
    {
        ["family"] = "Id of the family.",
        ["clearance"] = "The clearance: third-end-play.",
        ["unit"] = "Id of the unit.",
        ["position"] = "Id of the position; the second of several like parts has %232 behind it.",
        ["instrument"] = "Id of the instrument.",
        ["plugin"] = "Id of the plug-in: the name of its folder, or of its file when it is a family written as one.",
        ["code"] = "A problem code.",
        ["judgement"] = "Id of the kept judgement.",
        ["attachment"] = "Id of the attachment.",
        ["label"] = "The code on the label, as scanned or typed.",
        ["component"] = "Id of the component.",
        ["station"] = "Id of the bench.",
        ["part"] = "Number of the part in the shop's price list.",
        ["stock"] = "Id of what lies on the shelf.",
        ["reservation"] = "Id of the reservation.",
        ["plan"] = "Id of the plan.",
        ["sequence"] = "Number of the entry in the chain.",
        ["backup"] = "Name of the backup's folder.",
        ["shop"] = "Name of the other shop: its Rebuild:Shop.",
        ["token"] = "Name of the token.",
        ["machining"] = "Id of the machining job.",
        ["webhook"] = "Id of the receiver.",
        ["delivery"] = "Id of the delivery: the id of the message that was sent.",
    }.ToFrozenDictionary();

    /// <inheritdoc/>
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        var metadata = context.ApiDescription.ActionDescriptor.EndpointMetadata;
        operation.Parameters ??= [];
        foreach (var parameter in operation.Parameters.OfType<OpenApiParameter>().Where(p => p.In == ParameterLocation.Path))
            parameter.Description = PathWords[parameter.Name!];
        foreach (var option in metadata.OfType<QueryOption>().DistinctBy(o => o.Name))
            operation.Parameters.Add(Query(option));
        foreach (var header in Headers(metadata))
            operation.Parameters.Add(header);
        if (metadata.OfType<BodyExample>().FirstOrDefault() is { } example && operation.RequestBody?.Content is { } content)
            content.Values.OfType<OpenApiMediaType>().First().Example = JsonNode.Parse(example.Json);
        if (operation.RequestBody is OpenApiRequestBody body)
            body.Required = true;
        SayWhoIsAdmitted(operation, Admits.Of(metadata), context.Document);
    }

    // An empty requirement says that nobody has to say who they are, where silence would leave it open. The word in the list is the least scope (OpenAPI
    // 3.1.1, Security Requirement Object: role names, for schemes other than OAuth 2).
    private static void SayWhoIsAdmitted(OpenApiOperation operation, Admits admits, OpenApiDocument document)
    {
        var asked = new OpenApiSecurityRequirement();
        if (admits.Least is { } least)
            asked.Add(new OpenApiSecuritySchemeReference(OpenApiSetup.TokenScheme, document), [least.Word()]);
        operation.Security = [asked];
        operation.Description += admits.Least is { } scope ? $" Scope: `{scope.Word()}`." : $" Asks for no token: {admits.Why}.";
    }

    private static OpenApiParameter Query(QueryOption option) => new()
    {
        Name = option.Name,
        In = ParameterLocation.Query,
        Description = option.Description,
        Required = option.Required,
        Schema = new OpenApiSchema
        {
            Type = option.Type switch { "integer" => JsonSchemaType.Integer, "boolean" => JsonSchemaType.Boolean, _ => JsonSchemaType.String },
            Enum = option.Allowed is { } allowed ? [.. allowed.Select(a => (JsonNode)JsonValue.Create(a)!)] : null,
        },
    };

    private static IEnumerable<OpenApiParameter> Headers(IList<object> metadata)
    {
        if (metadata.OfType<TakesKey>().Any())
        {
            var required = metadata.OfType<KeyRequired>().Any();
            yield return Header("Idempotency-Key", "A value of your own for this request. The same key with the same request gives the first answer again, for 7 days.", required);
        }

        if (metadata.OfType<NeedsVersion>().Any())
            yield return Header("If-Match", "The ETag of the version you are changing, or * for any.", true);
        if (metadata.OfType<CarriesTag>().Any())
            yield return Header("If-None-Match", "The ETag you have; the answer is 304 when it still stands.", false);
    }

    private static OpenApiParameter Header(string name, string description, bool required) => new()
    {
        Name = name,
        In = ParameterLocation.Header,
        Description = description,
        Required = required,
        Schema = new OpenApiSchema { Type = JsonSchemaType.String },
    };
}
