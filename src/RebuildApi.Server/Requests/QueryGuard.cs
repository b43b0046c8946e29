using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>Refuses query parameters that the address does not declare: a misspelt one would otherwise be lost in silence.</summary>
public sealed class QueryGuard(RequestDelegate next)
{
    /// <summary>Runs the rest of the pipeline when all parameters are known.</summary>
    public Task InvokeAsync(HttpContext http)
    {
        if (http.GetEndpoint() is { } endpoint && endpoint.Metadata.GetMetadata<Strict>() is not null)
            Check(http, [.. endpoint.Metadata.GetOrderedMetadata<QueryOption>().Select(o => o.Name)]);
        return next(http);
    }

    private static void Check(HttpContext http, string[] known)
    {
        var complaints = new Complaints();
        foreach (var name in http.Request.Query.Keys.Except(known, StringComparer.Ordinal))
            complaints.AddUnknown("query/" + name, FieldProblems.UnknownField, $"There is no parameter {name} here.", name, known);
        complaints.ThrowIfAny(Problems.InvalidQuery);
    }
}

/// <summary>Says that an address takes only the query parameters that it declares.</summary>
public sealed record Strict;
