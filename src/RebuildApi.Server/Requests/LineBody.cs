using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;

namespace RebuildApi.Server.Requests;

/// <summary>A body of lines that is read while the answer is written, and never as a whole.</summary>
/// <param name="IsTable">Whether it is a table; else one JSON object on each line.</param>
public sealed record LineBody(bool IsTable) : IEndpointParameterMetadataProvider
{
    /// <summary>One JSON object on each line.</summary>
    public const string Ndjson = "application/x-ndjson";

    /// <summary>Looks at its type only; called by the framework.</summary>
    public static ValueTask<LineBody?> BindAsync(HttpContext http, ParameterInfo parameter) =>
        ValueTask.FromResult<LineBody?>(new LineBody(http.Request.ContentType?.StartsWith("text/csv", StringComparison.OrdinalIgnoreCase) == true));

    /// <summary>Tells the document what is taken.</summary>
    public static void PopulateMetadata(ParameterInfo parameter, EndpointBuilder builder)
    {
        builder.Metadata.Add(new AcceptsMetadata([Ndjson, "text/csv"], typeof(string)));
        builder.Metadata.Add(new AnyLength());
    }
}

/// <summary>Says that a body of any length is taken.</summary>
public sealed record AnyLength;
