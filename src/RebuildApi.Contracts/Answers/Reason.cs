namespace RebuildApi.Contracts;

/// <summary>Why: a code with its arguments, put into words in one place so that every language and every client says the same.</summary>
/// <param name="Code">A code of the engine's list: <c>below-low-limit</c>.</param>
/// <param name="Arguments">Argument name to value. Lengths as whole nanometres with the key ending in <c>Nm</c>; other numbers invariant.</param>
/// <param name="Rule">The rule or limit that speaks.</param>
public sealed record Reason(string Code, IReadOnlyDictionary<string, string> Arguments, string Rule);
