using System.Net;
using Microsoft.AspNetCore.Mvc.Testing;
using RebuildApi.Server.Access;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Access;

/// <summary>Browsers: the sign-in page, its cookie, and who may use it.</summary>
public sealed class SignInTests
{
    private const string Cookie = "rebuild-web";
    private static readonly string[] Pages = ["/", "/shop", "/bench/u1", "/units/u1", "/units/u1/record", "/units/u1/assembly"];
    private static readonly string[] OpenPages = ["/sign-in", "/addresses", "/problems", "/problems/token-required", "/docs/index.html", "/openapi/v1.json", "/icon.svg", "/health/live"];

    [Fact]
    public async Task A_page_leads_who_has_no_token_to_the_sign_in_page_and_back()
    {
        await using var server = ShopServer.Open();
        using var known = await server.WithUnit();
        using var stranger = server.CreateStranger();
        foreach (var path in Pages)
        {
            using var answer = await stranger.GetAsync(path);
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
            Assert.Equal("/sign-in?next=" + Uri.EscapeDataString(path), answer.Headers.Location!.OriginalString);
            using var signedIn = await stranger.Send(HttpMethod.Get, path, null, ("Cookie", $"{Cookie}={server.Token}"));
            Assert.Equal(HttpStatusCode.OK, signedIn.StatusCode);
        }

        foreach (var path in OpenPages)
            Assert.NotEmpty(await stranger.GetStringAsync(path));
    }

    [Theory]
    [InlineData("http://localhost", false)]
    [InlineData("https://localhost", true)]
    public async Task Signing_in_gives_a_cookie_that_no_script_reads_and_no_other_site_sends(string address, bool isSecure)
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateStranger();
        http.BaseAddress = new Uri(address);
        using var answer = await http.Send(HttpMethod.Post, "/sign-in", $$"""{ "token": "{{server.Token}}" }""");
        var cookie = answer.Headers.GetValues("Set-Cookie").Single().Split("; ").Select(p => p.ToLowerInvariant()).ToArray();
        Assert.Contains("httponly", cookie);
        Assert.Contains("samesite=strict", cookie);
        Assert.Contains("path=/", cookie);
        Assert.Equal(isSecure, cookie.Contains("secure"));
        Assert.DoesNotContain(server.Token, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);

        using var signedOut = await http.Send(HttpMethod.Post, "/sign-out", "{}", ("Cookie", $"{Cookie}={server.Token}"), ("Origin", address));
        Assert.Equal(HttpStatusCode.NoContent, signedOut.StatusCode);
        Assert.Contains("expires=Thu, 01 Jan 1970", signedOut.Headers.GetValues("Set-Cookie").Single(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_token_signs_nobody_in()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateStranger();
        using var answer = await http.Send(HttpMethod.Post, "/sign-in", $$"""{ "token": "{{Secret.New()}}" }""");
        Assert.Equal("token-refused", (string)(await answer.Problem())["code"]!);
        Assert.False(answer.Headers.Contains("Set-Cookie"));
    }

    // Sec-Fetch-Site as W3C Fetch Metadata Request Headers, 2.2: another port of this host is same-site.
    [Theory]
    [InlineData("same-origin", "http://localhost", HttpStatusCode.Created)]
    [InlineData("same-site", "http://localhost:9999", HttpStatusCode.Unauthorized)]
    [InlineData("cross-site", "http://elsewhere.example", HttpStatusCode.Unauthorized)]
    [InlineData(null, "http://elsewhere.example", HttpStatusCode.Forbidden)]
    [InlineData(null, "null", HttpStatusCode.Forbidden)]
    [InlineData(null, null, HttpStatusCode.Forbidden)]
    public async Task The_cookie_changes_something_only_for_a_page_of_this_very_origin(string? site, string? origin, HttpStatusCode expected)
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateStranger();
        var headers = new List<(string, string)> { ("Cookie", $"{Cookie}={server.Token}") };
        if (site is not null)
            headers.Add(("Sec-Fetch-Site", site));
        if (origin is not null)
            headers.Add(("Origin", origin));
        using var answer = await http.Send(HttpMethod.Post, "/v1/units", """{ "id": "u1", "tag": "T-1", "family": "brackenmere-4", "person": "Ada" }""", [.. headers]);
        Assert.Equal(expected, answer.StatusCode);
    }

    [Theory]
    [InlineData("same-site", "no-cors", HttpStatusCode.Unauthorized)]
    [InlineData("cross-site", "cors", HttpStatusCode.Unauthorized)]
    [InlineData("same-origin", "cors", HttpStatusCode.OK)]
    [InlineData("same-site", "navigate", HttpStatusCode.OK)]
    public async Task A_page_of_another_port_reads_nothing_with_the_cookie_and_a_person_may_follow_a_link(string site, string mode, HttpStatusCode expected)
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateStranger();
        using var answer = await http.Send(HttpMethod.Get, "/v1/units", null, ("Cookie", $"{Cookie}={server.Token}"), ("Sec-Fetch-Site", site), ("Sec-Fetch-Mode", mode));
        Assert.Equal(expected, answer.StatusCode);
    }

    // A name that an attacker's page points here by DNS: the host is refused before the cookie is looked at.
    [Fact]
    public async Task A_name_that_was_pointed_here_gets_nothing_with_the_cookie()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateStranger();
        using var answer = await http.Send(HttpMethod.Get, "/v1/units", null, ("Cookie", $"{Cookie}={server.Token}"), ("Host", "rebound.example"), ("Sec-Fetch-Site", "same-origin"));
        Assert.Equal("host-not-allowed", (string)(await answer.Problem())["code"]!);
    }

    [Fact]
    public async Task Where_no_tokens_are_asked_for_everybody_on_this_machine_is_local()
    {
        await using var server = ShopServer.Open().With("Rebuild:Access", "this-machine");
        using var http = server.CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false });
        Assert.Null(http.DefaultRequestHeaders.Authorization);
        Assert.Equal(("local", "administrator"), ((string)(await http.Read("/v1/access"))["name"]!, (string)(await http.Read("/v1/access"))["scope"]!));
        using var page = await http.GetAsync("/");
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        var home = await page.Content.ReadAsStringAsync();
        Assert.DoesNotContain("href=\"/sign-in\"", home, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"out\"", home, StringComparison.Ordinal);
        Assert.Contains("asks for no token", await http.GetStringAsync("/sign-in"), StringComparison.Ordinal);
    }
}
