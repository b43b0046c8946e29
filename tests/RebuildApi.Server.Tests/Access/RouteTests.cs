using System.Net;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using RebuildApi.Server.Access;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Access;

/// <summary>Each role against each route (OWASP API Security Top 10, 2023: API1 and API5).</summary>
public sealed class RouteTests
{
    /// <summary>Who may do what, but for routes where the verb says it all: reading asks for <c>read</c>, anything else for <c>bench</c>.</summary>
    private static readonly Dictionary<string, Scope?> Table = new()
    {
        ["getLive"] = null,
        ["getReady"] = null,
        ["checkOne"] = null,
        ["checkRows"] = Scope.Read,
        ["judgeSnapshots"] = Scope.Read,
        ["judgePairings"] = Scope.Read,
        ["validateFamily"] = Scope.Read,
        ["rejudgeUnderFile"] = Scope.Read,
        ["diagnose"] = Scope.Read,
        ["judgeCandidates"] = Scope.Read,
        ["solveSelection"] = Scope.Read,
        ["allocateShelf"] = Scope.Read,
        ["tradeOff"] = Scope.Read,
        ["registerInstrument"] = Scope.Office,
        ["changeInstrument"] = Scope.Office,
        ["addCalibration"] = Scope.Office,
        ["addStudy"] = Scope.Office,
        ["putPolicy"] = Scope.Office,
        ["moveEdition"] = Scope.Office,
        ["acceptPriors"] = Scope.Office,
        ["changeRates"] = Scope.Office,
        ["addPart"] = Scope.Office,
        ["importParts"] = Scope.Office,
        ["changePart"] = Scope.Office,
        ["addStock"] = Scope.Office,
        ["importStock"] = Scope.Office,
        ["changeStock"] = Scope.Office,
        ["choosePlan"] = Scope.Office,
        ["makeQuote"] = Scope.Office,
        ["approveQuote"] = Scope.Office,
        ["writeInvoiceLines"] = Scope.Office,
        ["getAuditEntry"] = Scope.Office,
        ["listCustomers"] = Scope.Office,
        ["exportCustomer"] = Scope.Office,
        ["approvePlugin"] = Scope.Administrator,
        ["reloadPlugin"] = Scope.Administrator,
        ["listBackups"] = Scope.Administrator,
        ["makeBackup"] = Scope.Administrator,
        ["checkBackup"] = Scope.Administrator,
        ["listWebhooks"] = Scope.Administrator,
        ["makeWebhook"] = Scope.Administrator,
        ["getWebhook"] = Scope.Administrator,
        ["changeWebhook"] = Scope.Administrator,
        ["removeWebhook"] = Scope.Administrator,
        ["replaceWebhookSecret"] = Scope.Administrator,
        ["listDeliveries"] = Scope.Administrator,
        ["redeliver"] = Scope.Administrator,
        ["pingWebhook"] = Scope.Administrator,
        ["listSharings"] = Scope.Administrator,
        ["openToShop"] = Scope.Administrator,
        ["closeToShop"] = Scope.Administrator,
        ["listTokens"] = Scope.Administrator,
        ["issueToken"] = Scope.Administrator,
        ["getToken"] = Scope.Administrator,
        ["revokeToken"] = Scope.Administrator,
    };

    [Fact]
    public async Task Every_route_names_whom_it_admits_and_whoever_is_let_in_freely_has_a_reason()
    {
        await using var server = ShopServer.Open();
        var routes = server.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().ToArray();
        Assert.True(routes.Length > 100);
        Assert.Empty(routes.Where(r => r.Metadata.GetMetadata<Admits>() is null).Select(r => r.DisplayName));
        Assert.Empty(routes.Where(r => Admits.Of(r) is { Least: null, Why: null or "" }).Select(r => r.DisplayName));
    }

    // A route may ask for more than its verb would without standing in the table, never for less.
    [Fact]
    public async Task Every_operation_asks_for_what_the_table_says()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var operations = (await ApiDocument.Of(http)).Operations.ToArray();
        Assert.All(operations, o =>
        {
            var id = ((string)o.Node["operationId"]!).Replace("Csv", "", StringComparison.Ordinal).Replace("Ndjson", "", StringComparison.Ordinal);
            var byVerb = Admits.ByVerb(o.Verb.Method).Least;
            if (Table.TryGetValue(id, out var said) || o.Path.StartsWith("/v1/calculations/", StringComparison.Ordinal))
                Assert.Equal((id, said ?? (o.Method == "post" ? Scope.Read : null)), (id, LeastOf(o)));
            else
                Assert.True(LeastOf(o) >= byVerb, $"{id} asks for {LeastOf(o)?.Word() ?? "nothing"}; if that is meant, it stands in the table.");
        });
        Assert.Empty(Table.Keys.Except(operations.Select(o => (string)o.Node["operationId"]!)));
    }

    [Fact]
    public async Task Each_role_gets_into_each_route_that_admits_it_and_into_no_other()
    {
        await using var server = ShopServer.Open();
        using var administrator = await server.WithUnit();
        using var stranger = server.CreateStranger();
        using var reader = await server.ClientOf(Scope.Read);
        using var bench = await server.ClientOf(Scope.Bench);
        using var office = await server.ClientOf(Scope.Office);
        (Scope? Scope, HttpClient Http)[] roles = [(null, stranger), (Scope.Read, reader), (Scope.Bench, bench), (Scope.Office, office), (Scope.Administrator, administrator)];
        foreach (var operation in (await ApiDocument.Of(administrator)).Operations)
        {
            foreach (var (scope, http) in roles)
                await Try(operation, scope, http);
        }
    }

    // With a parameter that no route knows: who is let in comes as far as that, and nothing is done.
    private static async Task Try(Operation operation, Scope? scope, HttpClient http)
    {
        var path = operation.Filled() + "?unkonwn=1";
        using var answer = operation.Method == "get"
            ? await http.GetAsync(path)
            : await http.Send(operation.Verb, path, System.Text.Encoding.UTF8.GetBytes(operation.Example ?? "{}"), operation.ContentType, ("Idempotency-Key", "k"), ("If-Match", "*"));
        var least = LeastOf(operation);
        var code = (string)(await answer.Problem())["code"]!;
        var expected = least is null || scope >= least ? "invalid-query" : scope is null ? "token-required" : "scope-missing";
        Assert.True(expected == code, $"{operation} as {scope?.Word() ?? "nobody"}: {code} instead of {expected}");
        if (code == "invalid-query")
            return;
        Assert.Equal(scope is null ? HttpStatusCode.Unauthorized : HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.StartsWith("Bearer realm=\"rebuild\"", answer.Headers.WwwAuthenticate.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_token_that_is_too_small_is_told_what_it_would_take()
    {
        await using var server = ShopServer.Open();
        using var bench = await server.ClientOf(Scope.Bench);
        using var answer = await bench.GetAsync("/v1/tokens");
        var problem = await answer.Problem();
        Assert.Equal(("administrator", "bench"), ((string)problem["scopeNeeded"]!, (string)problem["scopeHad"]!));
        Assert.Contains("error=\"insufficient_scope\", scope=\"administrator\"", answer.Headers.WwwAuthenticate.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_route_that_says_nothing_is_for_administrators_and_what_is_no_route_reveals_nothing()
    {
        Assert.Equal(Scope.Administrator, Admits.Of(new Endpoint(null, EndpointMetadataCollection.Empty, "says nothing")).Least);
        await using var server = ShopServer.Open();
        using var stranger = server.CreateStranger();
        using var nothing = await stranger.GetAsync("/v1/nothing");
        using var method = await stranger.Send(HttpMethod.Delete, "/v1/units", "{}");
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.MethodNotAllowed), (nothing.StatusCode, method.StatusCode));
    }

    private static Scope? LeastOf(Operation operation) =>
        operation.Node["security"]![0]!["token"] is { } scopes ? Scopes.Of((string)scopes[0]!) : null;
}
