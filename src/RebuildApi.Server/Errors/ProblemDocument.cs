using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Server.Errors;

/// <summary>Problem details (RFC 9457): the one shape of every error.</summary>
/// <param name="Type">Address of a page of this service with cause and fix; works without a network.</param>
/// <param name="Title">The same words for each code.</param>
/// <param name="Status">HTTP status.</param>
/// <param name="Detail">What is wrong with this request.</param>
/// <param name="Instance">The address that was asked.</param>
/// <param name="Code">Stable code for programs.</param>
/// <param name="Hint">What to do about it.</param>
/// <param name="Errors">What is wrong, field by field; all of it, not only the first.</param>
/// <param name="TraceId">Names this request in the log.</param>
public sealed record ProblemDocument(
    string Type,
    string Title,
    int Status,
    string Detail,
    string Instance,
    string Code,
    string Hint,
    ImmutableArray<FieldError> Errors,
    string TraceId)
{
    /// <summary>Further members of some problems, such as <c>currentVersion</c>.</summary>
    [JsonExtensionData]
    public IDictionary<string, object>? Extras { get; init; }
}
