using System.Reflection;
using System.Text.Json;
using Microsoft.AspNetCore.Http.Metadata;
using RebuildApi.Server.Json;

namespace RebuildApi.Server.Results;

/// <summary>200 with one thing and, where it has one, its entity tag; 304 when the client has it already.</summary>
/// <typeparam name="T">What is answered.</typeparam>
public sealed class Found<T>(T value, string? etag = null) : IResult, IEndpointMetadataProvider, IValueHttpResult<T>
{
    /// <inheritdoc/>
    public T Value { get; } = value;

    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        if (Conditional.Matches(httpContext, etag))
            return;
        httpContext.Begin();
        httpContext.Response.ContentType = "application/json; charset=utf-8";
        // What is at hand is written to its end: time that ran out in the middle would have the problem written behind half an answer.
        await JsonSerializer.SerializeAsync(httpContext.Response.Body, Value, WireJson.Options, CancellationToken.None);
    }

    /// <inheritdoc/>
    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(T), ["application/json"]));
}
