using System.Collections.Immutable;

namespace RebuildApi.Server.Errors;

/// <summary>One thing that is wrong in a request.</summary>
/// <param name="Pointer">JSON pointer to it (RFC 6901), or <c>query/name</c>, <c>header/name</c>, <c>path/name</c>, <c>row/12/column</c>.</param>
/// <param name="Code">Stable code; explained at /problems/{code}.</param>
/// <param name="Message">What is wrong, in plain words.</param>
/// <param name="Got">What was sent.</param>
/// <param name="Allowed">What would have been right.</param>
/// <param name="Fix">How to put it right.</param>
public sealed record FieldError(
    string Pointer,
    string Code,
    string Message,
    string? Got = null,
    ImmutableArray<string>? Allowed = null,
    string? Fix = null);
