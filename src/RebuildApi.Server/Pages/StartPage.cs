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

    private static IResult Show(EndpointDataSource endpoints) => Page.Of("Rebuild API", $"""
        <p>Takes in manual gearboxes, findings and measurements from the benches of a rebuild shop, and answers with reasons: is this part good,
        will these clearances come right, may these parts run together.</p>
        <p>The service advises; a person decides and signs. The maker's data, local codes and licensed practice stand before anything said here.</p>
        <p><a href="/">Bench</a> · <a href="/shop">Shop</a> · <a href="/docs">Reference</a> · <a href="/openapi/v1.json">OpenAPI document</a> · <a href="/problems">What can go wrong</a> · <a href="/health/ready">Health</a></p>
        <table><thead><tr><th>Address</th><th>What</th></tr></thead><tbody>
        {string.Concat(Rows(endpoints))}
        </tbody></table>
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
        return $"<tr><td><code>{method}</code> {shown}</td><td>{Page.Safe(endpoint.Metadata.GetMetadata<IEndpointSummaryMetadata>()!.Summary)}</td></tr>\n";
    }
}
