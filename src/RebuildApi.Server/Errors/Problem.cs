namespace RebuildApi.Server.Errors;

/// <summary>One entry of the closed catalogue of what can go wrong.</summary>
/// <param name="Code">Stable code, the same for ever.</param>
/// <param name="Status">HTTP status; 0 for codes that stand only beside a field.</param>
/// <param name="Title">The same words each time.</param>
/// <param name="Cause">Why it happens.</param>
/// <param name="Fix">What to do about it.</param>
public sealed record Problem(string Code, int Status, string Title, string Cause, string Fix);
