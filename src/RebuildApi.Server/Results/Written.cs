using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http.Metadata;
using RebuildApi.Server.Json;
using RebuildApi.Storage;

namespace RebuildApi.Server.Results;

/// <summary>Makes the answer of a change as bytes, so that it can be stored with its idempotency key and given again.</summary>
public static class Answer
{
    /// <summary>201 with what was made.</summary>
    public static StoredAnswer Created<T>(string location, T value, string? etag = null) =>
        Of(StatusCodes.Status201Created, value, ("Location", location), ("ETag", etag));

    /// <summary>200 with what it became.</summary>
    public static StoredAnswer Changed<T>(T value, string? etag = null) => Of(StatusCodes.Status200OK, value, ("ETag", etag));

    private static StoredAnswer Of<T>(int status, T value, params ReadOnlySpan<(string Name, string? Value)> headers)
    {
        var kept = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (name, text) in headers)
        {
            if (text is not null)
                kept[name] = text;
        }

        return new StoredAnswer(status, "application/json; charset=utf-8", JsonSerializer.SerializeToUtf8Bytes(value, WireJson.Options), kept.ToImmutable());
    }
}

/// <summary>The answer of a change, new or given again.</summary>
public abstract class Written(StoredAnswer answer, bool dryRun) : IResult
{
    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        response.StatusCode = answer.Status;
        foreach (var (name, value) in answer.Headers)
            response.Headers[name] = value;
        if (answer.Replayed)
            response.Headers["Idempotency-Replayed"] = "true";
        if (dryRun)
            response.Headers["Preference-Applied"] = "dry-run";
        response.ContentType = answer.ContentType;
        // It is done, whatever the time: the answer says so to its end.
        await response.Body.WriteAsync(dryRun ? Marked(answer.Body) : answer.Body, CancellationToken.None);
    }

    private static ReadOnlyMemory<byte> Marked(ReadOnlyMemory<byte> body)
    {
        var node = JsonNode.Parse(body.Span)!.AsObject();
        node["dryRun"] = true;
        return JsonSerializer.SerializeToUtf8Bytes(node, WireJson.Options);
    }
}

/// <summary>201 with what was made.</summary>
/// <typeparam name="T">What was made.</typeparam>
public sealed class CreatedAnswer<T>(StoredAnswer answer, bool dryRun) : Written(answer, dryRun), IEndpointMetadataProvider
{
    /// <inheritdoc/>
    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status201Created, typeof(T), ["application/json"]));
}

/// <summary>200 with what it became.</summary>
/// <typeparam name="T">What was changed.</typeparam>
public sealed class ChangedAnswer<T>(StoredAnswer answer, bool dryRun) : Written(answer, dryRun), IEndpointMetadataProvider
{
    /// <inheritdoc/>
    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(T), ["application/json"]));
}
