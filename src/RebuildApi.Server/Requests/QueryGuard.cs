using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>Refuses query parameters that the address does not declare, or with values that the declaration excludes: what is misspelt would otherwise be lost in silence.</summary>
public sealed class QueryGuard(RequestDelegate next)
{
    /// <summary>Runs the rest of the pipeline when all parameters are known.</summary>
    public Task InvokeAsync(HttpContext http)
    {
        if (http.GetEndpoint() is { } endpoint && endpoint.Metadata.GetMetadata<Strict>() is not null)
            Check(http, [.. endpoint.Metadata.GetOrderedMetadata<QueryOption>().DistinctBy(o => o.Name)]);
        return next(http);
    }

    private static void Check(HttpContext http, QueryOption[] options)
    {
        var complaints = new Complaints();
        var names = options.Select(o => o.Name).ToArray();
        foreach (var name in http.Request.Query.Keys.Except(names, StringComparer.Ordinal))
            complaints.AddUnknown("query/" + name, FieldProblems.UnknownField, $"There is no parameter {name} here.", name, names);
        complaints.ThrowIfAny(Problems.InvalidQuery);
        foreach (var option in options)
            Check(http, option);
    }

    private static void Check(HttpContext http, QueryOption option)
    {
        var text = option switch
        {
            { Type: "boolean" } => QueryText.Flag(http, option.Name).ToString(),
            { Allowed: { } words } => QueryText.Word(http, option.Name, [.. words]),
            _ => QueryText.Of(http, option.Name),
        };
        if (text is null && option.Required)
            throw QueryText.Wrong(option.Name, FieldProblems.MissingField, "The parameter is missing.", null);
    }
}

/// <summary>Says that an address takes only the query parameters that it declares.</summary>
public sealed record Strict;
