using System.Globalization;
using Microsoft.AspNetCore.Http.Timeouts;
using Microsoft.OpenApi;
using Scope = RebuildApi.Server.Access.Scope;
using RebuildApi.Server.Access;
using RebuildApi.Server.Endpoints;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RebuildApi.Server.OpenApi;

/// <summary>Adds the answers that an operation may give when something is wrong, each with its codes.</summary>
public sealed class OperationAnswers : IOperationFilter
{
    private static readonly Problem[] Everywhere =
    [
        Problems.HostNotAllowed, Problems.InvalidQuery, Problems.BadRequest, Problems.TooManyRequests, Problems.Unexpected,
    ];

    private static readonly Problem[] OfChanges = [Problems.CrossSite, Problems.UnsupportedMediaType, Problems.BodyTooLarge, Problems.InvalidHeader];

    private static readonly Problem[] OfBodies = [Problems.MalformedJson, Problems.InvalidBody];

    /// <inheritdoc/>
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        var metadata = context.ApiDescription.ActionDescriptor.EndpointMetadata;
        operation.Responses ??= [];
        Describe200s(operation, context.ApiDescription.HttpMethod!, metadata.OfType<CarriesTag>().Any());
        if (metadata.OfType<Offer>().SingleOrDefault() is { } offer)
            Offered(operation, offer);
        foreach (var status in ProblemsOf(context.ApiDescription.HttpMethod!, operation.RequestBody is not null, metadata).GroupBy(p => p.Status).OrderBy(g => g.Key))
            operation.Responses[status.Key.ToString(CultureInfo.InvariantCulture)] = Answer(status, context);
    }

    private static void Describe200s(OpenApiOperation operation, string method, bool tagged)
    {
        foreach (var response in operation.Responses!.Values.OfType<OpenApiResponse>())
            response.Description = method == "GET" ? "What was asked for." : "What was done.";
        if (tagged)
            operation.Responses["304"] = new OpenApiResponse { Description = "It is as the client has it." };
    }

    private static void Offered(OpenApiOperation operation, Offer offer)
    {
        var given = (OpenApiResponse)operation.Responses!["200"];
        foreach (var form in offer.Forms)
            given.Content![form.MediaType] = new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String } };
    }

    private static IEnumerable<Problem> ProblemsOf(string method, bool body, IList<object> metadata)
    {
        var key = metadata.OfType<TakesKey>().Any() ? new[] { Problems.IdempotencyKeyReused } : [];
        var needed = metadata.OfType<KeyRequired>().Any() ? new[] { Problems.IdempotencyKeyMissing } : [];
        return Everywhere
            .Concat(OfRecords(metadata))
            .Concat(method == "GET" ? [] : OfChanges.Where(p => p != Problems.BodyTooLarge || !metadata.OfType<AnyLength>().Any()))
            .Concat(body ? OfBodies : [])
            .Concat(key)
            .Concat(needed)
            .Concat(OfTokens(Admits.Of(metadata)))
            .Concat(metadata.OfType<MayFail>().SelectMany(m => m.Problems))
            .Distinct();
    }

    // Whoever asks for a token looks it up in the records. What takes as long as it takes is never late.
    private static IEnumerable<Problem> OfRecords(IList<object> metadata)
    {
        if (Admits.Of(metadata).Least is null)
            yield break;
        yield return Problems.StorageUnavailable;
        if (!metadata.OfType<DisableRequestTimeoutAttribute>().Any())
            yield return Problems.Timeout;
    }

    // A token of the least scope is any token: nothing can be too small for it.
    private static Problem[] OfTokens(Admits admits) => admits.Least switch
    {
        null => [],
        Scope.Read => [Problems.TokenRequired, Problems.TokenRefused],
        _ => [Problems.TokenRequired, Problems.TokenRefused, Problems.ScopeMissing],
    };

    private static OpenApiResponse Answer(IEnumerable<Problem> problems, OperationFilterContext context) => new()
    {
        Description = string.Join(" ", problems.Select(p => $"{p.Code}: {p.Title}.")),
        Content = new Dictionary<string, IOpenApiMediaType>
        {
            [ProblemWriter.MediaType] = new OpenApiMediaType { Schema = context.SchemaGenerator.GenerateSchema(typeof(ProblemDocument), context.SchemaRepository) },
        },
    };
}
