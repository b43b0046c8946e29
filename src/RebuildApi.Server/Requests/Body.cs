using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using Microsoft.AspNetCore.Http.Metadata;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests.Shapes;
using RebuildApi.Storage;

namespace RebuildApi.Server.Requests;

/// <summary>A JSON body, read strictly: everything wrong with it is said at once, by JSON pointer.</summary>
/// <param name="Value">What was sent.</param>
/// <param name="Given">The names of the fields that were sent, for changes where absent and null differ.</param>
/// <param name="Request">Who asks, for the store.</param>
/// <typeparam name="T">A request record.</typeparam>
public sealed record Body<T>(T Value, ImmutableHashSet<string> Given, WriteRequest Request) : IEndpointParameterMetadataProvider
{
    /// <summary>Reads the body; called by the framework.</summary>
    public static async ValueTask<Body<T>?> BindAsync(HttpContext http, ParameterInfo parameter)
    {
        var bytes = await RequestBytes.Read(http);
        using var document = StrictJson.Parse(bytes);
        var complaints = new Complaints();
        var value = http.RequestServices.GetRequiredService<ShapeBook>().Of(typeof(T)).Read(document.RootElement, "", complaints);
        complaints.ThrowIfAny(Problems.InvalidBody);
        return new Body<T>((T)value!, [.. document.RootElement.EnumerateObject().Select(m => m.Name)], Writes.RequestOf(http, bytes.Span));
    }

    /// <summary>Tells the document what is taken.</summary>
    public static void PopulateMetadata(ParameterInfo parameter, EndpointBuilder builder) =>
        builder.Metadata.Add(new AcceptsMetadata(["application/json"], typeof(T)));
}

/// <summary>A change that takes no body, but still says that it is JSON so that no web page can send it unasked.</summary>
/// <param name="Request">Who asks, for the store.</param>
public sealed record NoBody(WriteRequest Request)
{
    /// <summary>Reads nothing but headers; called by the framework.</summary>
    public static async ValueTask<NoBody?> BindAsync(HttpContext http, ParameterInfo parameter)
    {
        var bytes = await RequestBytes.Read(http);
        return new NoBody(Writes.RequestOf(http, bytes.Span));
    }
}
