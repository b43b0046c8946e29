using System.Collections.Immutable;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>Gathers everything that is wrong with one request, so that it can be put right in one go.</summary>
public sealed class Complaints
{
    // More than this helps nobody, and would let a small request cause a large answer.
    private const int Most = 100;
    private readonly List<FieldError> _errors = [];

    /// <summary>Whether anything is wrong.</summary>
    public bool Any => _errors.Count > 0;

    /// <summary>How many things are wrong so far.</summary>
    public int Count => _errors.Count;

    /// <summary>What is wrong.</summary>
    public ImmutableArray<FieldError> Errors => [.. _errors.Take(Most)];

    /// <summary>Notes one thing.</summary>
    public void Add(string pointer, Problem kind, string message, string? got = null, IEnumerable<string>? allowed = null, string? fix = null) =>
        _errors.Add(new FieldError(pointer, kind.Code, message, Shortened(got), allowed is null ? null : [.. allowed], fix));

    /// <summary>Notes what was found by another reading, at where it stands in the request.</summary>
    public void Add(string pointer, FieldError error) => _errors.Add(error with { Pointer = pointer });

    /// <summary>Notes that a name is not on a list, and which one was probably meant.</summary>
    public void AddUnknown(string pointer, Problem kind, string message, string got, IReadOnlyCollection<string> allowed) =>
        Add(pointer, kind, message, got, allowed.Order(StringComparer.Ordinal), Nearest.Fix(got, allowed));

    /// <summary>Ends the request when anything is wrong.</summary>
    /// <exception cref="ProblemException">Something is wrong.</exception>
    public void ThrowIfAny(Problem problem)
    {
        if (!Any)
            return;
        var detail = _errors.Count == 1 ? _errors[0].Message : $"{_errors.Count} things are wrong; the first: {_errors[0].Message}";
        throw new ProblemException(problem, detail, Errors);
    }

    private static string? Shortened(string? got) => got is { Length: > 120 } ? string.Concat(got.AsSpan(0, 117), "...") : got;
}
