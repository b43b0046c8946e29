using System.Net;
using RebuildApi.Server.Access;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Access;

/// <summary>Secrets are in no log, however fine, while tokens are used in every way there is.</summary>
public sealed class SecretLogTests
{
    [Fact]
    public async Task No_secret_is_logged_however_tokens_are_used()
    {
        await using var shop = await RunningShop.Start();
        using var administrator = shop.Client(shop.Token);
        using var stranger = shop.Client();
        var wrong = Secret.New();
        var issued = (string)(await administrator.Make("/v1/tokens", """{ "name": "bench-1", "scope": "bench" }"""))["secret"]!;
        var cookie = $"rebuild-{shop.Address.Port}";
        foreach (var secret in new[] { shop.Token, issued, wrong })
        {
            using var bearer = await stranger.Send(HttpMethod.Get, "/v1/tokens", null, ("Authorization", "Bearer " + secret));
            using var withCookie = await stranger.Send(HttpMethod.Get, "/v1/units", null, ("Cookie", $"{cookie}={secret}"));
            using var signIn = await stranger.Send(HttpMethod.Post, "/sign-in", $$"""{ "token": "{{secret}}" }""");
            using var broken = await stranger.Send(HttpMethod.Post, "/sign-in", $$"""{ "token": "{{secret}}", "tokn": 1 """);
            await shop.Raw($"GET /v1/units HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nAuthorization Bearer {secret}\r\n\r\n");
            await shop.Raw($"GET /v1/units HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nAuthorization: Bearer {secret}\u0001\r\n\r\n");
            using var page = await stranger.Send(HttpMethod.Get, "/", null, ("Cookie", $"{cookie}={secret}"));
        }

        Assert.True(shop.Log.Count > 50);
        Assert.Contains(shop.Log, line => line.Contains("/sign-in", StringComparison.Ordinal));
        Assert.DoesNotContain(shop.Log, line => line.Contains(Secret.Prefix, StringComparison.Ordinal));
        foreach (var secret in new[] { shop.Token, issued, wrong })
            Assert.DoesNotContain(shop.Log, line => line.Contains(secret[Secret.Prefix.Length..], StringComparison.Ordinal) || line.Contains(Secret.HashOf(secret), StringComparison.Ordinal));
    }

    // RFC 6750, 5.3: a bearer token in an address ends up in logs and histories.
    [Fact]
    public async Task A_token_in_an_address_is_not_taken()
    {
        await using var shop = await RunningShop.Start();
        using var stranger = shop.Client();
        foreach (var name in new[] { "access_token", "token" })
        {
            using var answer = await stranger.GetAsync(new Uri($"/v1/units?{name}={shop.Token}", UriKind.Relative));
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        }
    }
}
