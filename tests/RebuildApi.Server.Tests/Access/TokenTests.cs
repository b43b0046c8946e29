using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using RebuildApi.Server.Access;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Access;

/// <summary>Tokens from being issued to being revoked.</summary>
public sealed class TokenTests
{
    private const string Wanted = """{ "name": "bench-1", "scope": "bench", "expires": "2099-01-31T00:00:00Z" }""";

    [Fact]
    public async Task A_token_works_at_once_with_its_scope_and_its_name_stands_in_the_records()
    {
        await using var server = ShopServer.Open();
        using var administrator = server.CreateClient();
        var issued = await administrator.Make("/v1/tokens", Wanted);
        using var bench = server.ClientWith((string)issued["secret"]!);

        var may = await bench.Read("/v1/access");
        await bench.Make("/v1/units", """{ "id": "u1", "tag": "T-1", "family": "brackenmere-4", "person": "Ada" }""");

        Assert.Equal(("bench-1", "bench", 2), ((string)may["name"]!, (string)may["scope"]!, may["may"]!.AsArray().Count));
        Assert.Equal("bench-1", (string)(await bench.Read("/v1/audit?kind=unit"))["items"]![0]!["actor"]!);
        Assert.Equal("tests", (string)(await bench.Read("/v1/audit?kind=token"))["items"]![1]!["actor"]!);
        Assert.Contains("bench-1,bench,stands,", await administrator.GetStringAsync("/v1/tokens.csv"), StringComparison.Ordinal);
        Assert.NotNull((await administrator.Read("/v1/tokens/bench-1"))["lastUsed"]);
    }

    [Fact]
    public async Task A_secret_is_shown_once_and_its_key_never_brings_it_back()
    {
        await using var server = ShopServer.Open();
        using var administrator = server.CreateClient();
        using var first = await administrator.Send(HttpMethod.Post, "/v1/tokens", Wanted, ("Idempotency-Key", "once"));
        using var again = await administrator.Send(HttpMethod.Post, "/v1/tokens", Wanted, ("Idempotency-Key", "once"));
        var (shown, replayed) = ((await first.Content.ReadFromJsonAsync<JsonObject>())!, (await again.Content.ReadFromJsonAsync<JsonObject>())!);

        Assert.StartsWith(Secret.Prefix, (string)shown["secret"]!, StringComparison.Ordinal);
        Assert.Equal("true", again.Headers.GetValues("Idempotency-Replayed").Single());
        Assert.Null(replayed["secret"]);
        Assert.Equal("bench-1", (string)replayed["token"]!["name"]!);
        Assert.Equal(HttpStatusCode.Created, again.StatusCode);
    }

    [Fact]
    public async Task A_secret_is_nowhere_in_the_data_folder()
    {
        await using var server = ShopServer.Open();
        using var administrator = server.CreateClient();
        var secret = (string)(await administrator.Make("/v1/tokens", Wanted))["secret"]!;
        using var bench = server.ClientWith(secret);
        await bench.Read("/v1/access");
        foreach (var file in Directory.EnumerateFiles(server.DataFolder, "*", SearchOption.AllDirectories))
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var copy = new MemoryStream();
            await stream.CopyToAsync(copy);
            Assert.True(copy.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(secret)) < 0, file);
            Assert.True(copy.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(server.Token)) < 0, file);
        }
    }

    [Fact]
    public async Task A_dry_run_issues_nothing()
    {
        await using var server = ShopServer.Open();
        using var administrator = server.CreateClient();
        var tried = await administrator.Make("/v1/tokens?dryRun=true", Wanted);
        Assert.Null(tried["secret"]);
        Assert.Single((await administrator.Read("/v1/tokens"))["items"]!.AsArray());
    }

    [Fact]
    public async Task A_name_is_never_given_twice_and_a_time_that_has_passed_is_refused()
    {
        await using var server = ShopServer.Open();
        using var administrator = server.CreateClient();
        await administrator.Make("/v1/tokens", Wanted);
        await Refused("""{ "name": "bench-1", "scope": "read" }""", "duplicate-id");
        await Refused("""{ "name": "local", "scope": "read" }""", "duplicate-id");
        await Refused("""{ "name": "bench-2", "scope": "bench", "expires": "2001-01-01T00:00:00Z" }""", "invalid-content");
        await Refused("""{ "name": "bench-2", "scope": "owner" }""", "invalid-body");

        async Task Refused(string body, string code)
        {
            using var answer = await administrator.Send(HttpMethod.Post, "/v1/tokens", body);
            Assert.Equal(code, (string)(await answer.Problem())["code"]!);
        }
    }

    [Fact]
    public async Task A_revoked_token_ends_at_once_and_says_so()
    {
        await using var server = ShopServer.Open();
        using var administrator = server.CreateClient();
        using var bench = server.ClientWith((string)(await administrator.Make("/v1/tokens", Wanted))["secret"]!);
        await bench.Read("/v1/access");

        var revoked = await administrator.Make("/v1/tokens/bench-1/revocations", "{}");
        using var answer = await bench.GetAsync("/v1/units");

        Assert.Equal(("revoked", "tests"), ((string)revoked["state"]!, (string)revoked["revokedBy"]!));
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.Contains("was revoked", (string)(await answer.Problem())["detail"]!, StringComparison.Ordinal);
        Assert.Contains("error=\"invalid_token\"", answer.Headers.WwwAuthenticate.ToString(), StringComparison.Ordinal);
        using var health = await bench.GetAsync("/health/live");
        Assert.Equal(HttpStatusCode.OK, health.StatusCode);
    }

    [Fact]
    public async Task The_last_administrator_can_not_be_revoked_over_the_network()
    {
        await using var server = ShopServer.Open();
        using var administrator = server.CreateClient();
        using var refused = await administrator.Send(HttpMethod.Post, "/v1/tokens/tests/revocations", "{}");
        Assert.Equal("last-administrator", (string)(await refused.Problem())["code"]!);
        await administrator.Make("/v1/tokens", """{ "name": "ada", "scope": "administrator" }""");
        await administrator.Make("/v1/tokens/tests/revocations", "{}");
    }
}
