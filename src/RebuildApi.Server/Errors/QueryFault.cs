namespace RebuildApi.Server.Errors;

/// <summary>Something wrong with a parameter of the query.</summary>
public static class QueryFault
{
    /// <summary>The problem of one parameter.</summary>
    public static ProblemException Of(string name, Problem kind, string message, string? got, string[]? allowed = null, string? fix = null) =>
        new(Problems.InvalidQuery, $"{name}: {message}", [new FieldError("query/" + name, kind.Code, message, got, allowed is null ? null : [.. allowed], fix)]);
}
