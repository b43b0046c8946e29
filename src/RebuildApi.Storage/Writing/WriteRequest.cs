namespace RebuildApi.Storage;

/// <summary>Who asks for a change, and how a repeated request is known again.</summary>
/// <param name="Actor">Who: the token's name, <c>local</c> when no tokens are asked for, <c>console</c> for the commands of the executable.</param>
/// <param name="Operation">Which operation: method and path.</param>
/// <param name="IdempotencyKey">The client's key for this request, if it sent one.</param>
/// <param name="RequestSha256">Hash of what was sent.</param>
/// <param name="DryRun">Whether everything is undone at the end.</param>
public sealed record WriteRequest(string Actor, string Operation, string? IdempotencyKey, string RequestSha256, bool DryRun);
