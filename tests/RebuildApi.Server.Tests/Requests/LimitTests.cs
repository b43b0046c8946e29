using System.Net;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Requests;

public sealed class LimitTests
{
    [Fact]
    public async Task A_client_that_asks_too_often_is_told_when_to_come_back()
    {
        await using var server = ShopServer.Open().With("Rebuild:RequestsPerMinute", "2");
        using var http = server.CreateClient();
        await http.GetStringAsync("/health/live");
        await http.GetStringAsync("/health/live");
        using var third = await http.GetAsync("/health/live");
        Assert.Equal(HttpStatusCode.TooManyRequests, third.StatusCode);
        Assert.Equal("too-many-requests", (string)(await third.Problem())["code"]!);
        Assert.InRange(third.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 60);
    }

    [Fact]
    public async Task Every_answer_keeps_browsers_from_guessing_framing_and_loading()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        foreach (var path in new[] { "/", "/v1/units", "/v1/nothing", "/docs/index.html", "/problems/not-found" })
        {
            using var answer = await http.GetAsync(path);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.Equal("DENY", answer.Headers.GetValues("X-Frame-Options").Single());
            Assert.Contains("frame-ancestors 'none'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
            Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"));
        }
    }
}
