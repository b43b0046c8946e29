using System.Reflection;
using System.Text;
using Microsoft.AspNetCore.Http.Metadata;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>A family file: the file itself as YAML, or its text in JSON.</summary>
/// <param name="Name">Name for messages.</param>
/// <param name="Utf8">The file's bytes.</param>
public sealed record FamilyFileBody(string Name, byte[] Utf8) : IEndpointParameterMetadataProvider
{
    private const string Yaml = "application/yaml";
    private const string UsualName = "family.yaml";

    /// <summary>Reads the body; called by the framework.</summary>
    public static async ValueTask<FamilyFileBody?> BindAsync(HttpContext http, ParameterInfo parameter)
    {
        if (http.Request.ContentType?.StartsWith(Yaml, StringComparison.OrdinalIgnoreCase) == true)
            return new FamilyFileBody(UsualName, (await RequestBytes.Read(http)).ToArray());
        var body = (await Body<FamilyFileRequest>.BindAsync(http, parameter))!;
        return new FamilyFileBody(body.Value.Name ?? UsualName, Encoding.UTF8.GetBytes(body.Value.Text));
    }

    /// <summary>Tells the document what is taken.</summary>
    public static void PopulateMetadata(ParameterInfo parameter, EndpointBuilder builder) =>
        builder.Metadata.Add(new AcceptsMetadata(["application/json", Yaml], typeof(FamilyFileRequest)));
}
