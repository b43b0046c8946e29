using System.Collections.Immutable;

namespace RebuildApi.Server.Errors;

/// <summary>Ends a request with a problem of the catalogue. Thrown wherever the request turns out to be wrong, caught in one place.</summary>
public sealed class ProblemException(Problem problem, string detail, ImmutableArray<FieldError> errors = default) : Exception(detail)
{
    /// <summary>Which problem.</summary>
    public Problem Problem { get; } = problem;

    /// <summary>What is wrong, field by field.</summary>
    public ImmutableArray<FieldError> Errors { get; } = errors.IsDefault ? [] : errors;

    /// <summary>Further members of the answer, such as the current version.</summary>
    public ImmutableSortedDictionary<string, object> Extras { get; init; } = ImmutableSortedDictionary<string, object>.Empty;

    /// <summary>Headers of the answer, such as Retry-After.</summary>
    public ImmutableSortedDictionary<string, string> Headers { get; init; } = ImmutableSortedDictionary<string, string>.Empty;
}

/// <summary>Further members of a problem.</summary>
public static class ProblemExtras
{
    /// <summary>As an immutable map.</summary>
    public static ImmutableSortedDictionary<string, object> ToExtras(this IEnumerable<KeyValuePair<string, object>> members) =>
        members.ToImmutableSortedDictionary(StringComparer.Ordinal);
}
