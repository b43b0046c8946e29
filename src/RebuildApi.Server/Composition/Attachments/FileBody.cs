using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.Extensions.Options;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Attachments;

/// <summary>A file as the body, byte for byte.</summary>
/// <param name="Content">The bytes.</param>
/// <param name="MediaType">What the sender says that it is.</param>
/// <param name="Request">Who asks, for the store.</param>
public sealed record FileBody(ReadOnlyMemory<byte> Content, string MediaType, WriteRequest Request) : IEndpointParameterMetadataProvider
{
    /// <summary>Reads the body; called by the framework.</summary>
    public static async ValueTask<FileBody?> BindAsync(HttpContext http, ParameterInfo parameter)
    {
        var limit = http.RequestServices.GetRequiredService<IOptions<ServerOptions>>().Value.AttachmentBytes;
        var bytes = await RequestBytes.Read(http, limit);
        return new FileBody(bytes, http.Request.ContentType!.Split(';')[0].Trim().ToLowerInvariant(), Writes.RequestOf(http, bytes.Span));
    }

    /// <summary>Tells the document what is taken.</summary>
    public static void PopulateMetadata(ParameterInfo parameter, EndpointBuilder builder) =>
        builder.Metadata.Add(new AcceptsMetadata([.. FileSort.All.Select(s => s.MediaType)], typeof(Stream)));
}
