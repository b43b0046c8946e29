using System.Net;
using Microsoft.Extensions.Time.Testing;
using RebuildApi.Server.Access;
using RebuildApi.Server.Commands;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Access;

/// <summary>Which tokens count, and what becomes of those that do not.</summary>
public sealed class TokenCheckTests
{
    [Fact]
    public async Task A_token_expires_when_it_was_said_to()
    {
        var time = new FakeTimeProvider(DateTimeOffset.Parse("2026-03-02T12:00:00Z", System.Globalization.CultureInfo.InvariantCulture));
        var store = new StoreOfTokens();
        var book = new TokenBook(() => store.Store, time);
        await using (store)
        {
            var secret = await TokenDesk.Issue(store.Store, new NewToken("guest", Scope.Read, time.GetUtcNow().AddHours(1)), time);
            Assert.Equal("guest", CallerFinder.Look(await book.Find(secret, default), time.GetUtcNow()).Caller!.Name);
            time.Advance(TimeSpan.FromHours(1));
            var late = CallerFinder.Look(await book.Find(secret, default), time.GetUtcNow());
            Assert.Null(late.Caller);
            Assert.Contains("expired at 2026-03-02 13:00:00Z", late.Fault, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_token_that_another_process_revoked_ends_within_two_seconds()
    {
        var time = new FakeTimeProvider();
        await using var store = new StoreOfTokens();
        var book = new TokenBook(() => store.Store, time);
        var secret = await TokenDesk.Issue(store.Store, new NewToken("bench-1", Scope.Bench), time);
        Assert.NotNull(await book.Find(secret, default));
        await using (var other = store.Another())
        {
            await new TokenKeeper(other, time, TextWriter.Null).Revoke("bench-1");
        }

        time.Advance(TimeSpan.FromSeconds(2));
        Assert.NotNull((await book.Find(secret, default))!.Revoked);
    }

    [Fact]
    public async Task Who_tries_wrong_tokens_is_slowed_and_a_right_one_from_the_same_place_is_not()
    {
        await using var server = ShopServer.Open();
        using var good = server.CreateClient();
        var codes = new List<HttpStatusCode>();
        for (var i = 0; i <= WrongTokens.Limit.AtOnce; i++)
        {
            using var guess = server.ClientWith(Secret.New());
            using var answer = await guess.GetAsync("/v1/units");
            codes.Add(answer.StatusCode);
        }

        Assert.All(codes[..WrongTokens.Limit.AtOnce], c => Assert.Equal(HttpStatusCode.Unauthorized, c));
        Assert.Equal(HttpStatusCode.TooManyRequests, codes[^1]);
        Assert.NotNull(await good.Read("/v1/units"));
    }

    [Theory]
    [InlineData("Basic dGVzdHM6eA==")]
    [InlineData("Bearer")]
    [InlineData("Bearer ")]
    [InlineData("rb_abc")]
    [InlineData("Bearer rb_\u00e9")]
    public async Task What_is_no_bearer_token_counts_as_a_wrong_one(string header)
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateStranger();
        using var answer = await http.Send(HttpMethod.Get, "/v1/units", null, ("Authorization", header));
        Assert.Equal("token-refused", (string)(await answer.Problem())["code"]!);
    }

    /// <summary>FIPS 180-4, "abc", as every table of test values gives it.</summary>
    [Fact]
    public void Secrets_are_long_random_and_kept_as_their_SHA_256()
    {
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", Secret.HashOf("abc"));
        var many = Enumerable.Range(0, 200).Select(_ => Secret.New()).ToArray();
        Assert.Equal(200, many.Distinct().Count());
        Assert.All(many, s => Assert.Equal(32, System.Buffers.Text.Base64Url.DecodeFromChars(s.AsSpan(Secret.Prefix.Length)).Length));
        var hashes = many.Select(s => Convert.FromHexString(Secret.HashOf(s))).ToArray();
        Assert.Equal([0, 123, 199, -1], new[] { many[0], many[123], many[199], many[0] + "x" }.Select(s => Secret.Find(hashes, s)));
    }
}
