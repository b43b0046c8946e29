using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Pages;

/// <summary>What is here: the list of addresses.</summary>
public static class StartPage
{
    /// <summary>Serves the page.</summary>
    public static void MapStartPage(this IEndpointRouteBuilder routes) => routes.MapOpenPage("/addresses", Show,
        "it lists what the document lists, which anybody may read, and nothing of the shop");

    private static IResult Show(EndpointDataSource endpoints, PageWords w) => new Frame(w, w["addresses.title"], "addresses", $"""
        <p>{Page.Safe(w["addresses.about"])}</p>
        <p class="row"><a class="button" href="/docs">{Page.Safe(w["nav.docs"])}</a><a class="button" href="/openapi/v1.json">{Page.Safe(w["addresses.document"])}</a><a class="button" href="/problems">{Page.Safe(w["problems.title"])}</a><a class="button" href="/health/ready">{Page.Safe(w["addresses.health"])}</a></p>
        {Tables.Of(w["addresses.title"], [w["addresses.address"], w["problems.what"]], Rows(endpoints))}
        """);

    private static IEnumerable<string> Rows(EndpointDataSource endpoints) => endpoints.Endpoints
        .OfType<RouteEndpoint>()
        .Where(e => e.Metadata.GetMetadata<Strict>() is not null && e.Metadata.GetMetadata<IEndpointSummaryMetadata>() is not null)
        .OrderBy(e => e.RoutePattern.RawText, StringComparer.Ordinal)
        .Select(Row);

    private static string Row(RouteEndpoint endpoint)
    {
        var method = endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods[0] ?? "GET";
        var path = Page.Safe(endpoint.RoutePattern.RawText!);
        var shown = method == "GET" && !path.Contains('{', StringComparison.Ordinal) ? $"<a href=\"{path}\">{path}</a>" : path;
        return Tables.Row($"<code>{method}</code> {shown}", Page.Safe(endpoint.Metadata.GetMetadata<IEndpointSummaryMetadata>()!.Summary));
    }
}
