using RebuildApi.Server.Tests.Kit;
using Microsoft.Extensions.Time.Testing;
using RebuildApi.Server.Access;
using RebuildApi.Server.Commands;

namespace RebuildApi.Server.Tests.Access;

/// <summary>The command of the executable that works on the data folder.</summary>
public sealed class TokenCommandTests
{
    private static readonly string[] s_noTimeToCome = ["", "d", "-1d", "1.5d", "999999999d", "90", "90m", "2020-01-01"];

    private static readonly DateTimeOffset Now = new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task A_lost_administrators_token_is_mended_on_the_data_folder()
    {
        await using var store = new StoreOfTokens();
        var secret = (await Said(store, k => k.Add("ada", "administrator", "90d"))).Trim();
        Assert.Matches($"^{Secret.Prefix}[A-Za-z0-9_-]{{43}}$", secret);
        var found = CallerFinder.Look(await new TokenBook(() => store.Store, new FakeTimeProvider(Now)).Find(secret, default), Now);
        Assert.Equal(new Caller("ada", Scope.Administrator, Now.AddDays(90)), found.Caller);

        Assert.Contains("stands", await Said(store, k => k.List()), StringComparison.Ordinal);
        await Said(store, k => k.Revoke("ada"));
        Assert.Contains("revoked 2026-03-02", await Said(store, k => k.List()), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ada", "owner", null, "There is no scope owner")]
    [InlineData("a b", "read", null, "can't be a name")]
    [InlineData("../ada", "read", null, "can't be a name")]
    [InlineData("console", "read", null, "never given twice")]
    [InlineData("ada", "read", "soon", "not a time to come")]
    [InlineData("ada", "read", "0d", "not a time to come")]
    [InlineData("ada", "read", "2026-03-02", "not a time to come")]
    public async Task What_can_not_be_issued_is_refused_in_words(string name, string scope, string? expires, string says)
    {
        await using var store = new StoreOfTokens();
        var refusal = await Assert.ThrowsAsync<ArgumentException>(() => Said(store, k => k.Add(name, scope, expires)));
        Assert.Contains(says, refusal.Message, StringComparison.Ordinal);
        await Assert.ThrowsAsync<ArgumentException>(() => Said(store, k => k.Revoke(name)));
    }

    [FileFact]
    public async Task The_command_issues_lists_and_revokes()
    {
        await using var store = new StoreOfTokens();
        await TokenDesk.Issue(store.Store, new NewToken("first", Scope.Administrator), TimeProvider.System);
        var output = new StringWriter();
        Assert.Equal(0, await CommandLine.Run(["token", "add", "bench-1", "--scope", "bench", "--data", store.Folder], output, TextWriter.Null));
        Assert.Equal(0, await CommandLine.Run(["token", "revoke", "first", "--data", store.Folder], output, TextWriter.Null));
        Assert.Equal(0, await CommandLine.Run(["token", "list", "--data", store.Folder], output, TextWriter.Null));
        Assert.Equal(2, await CommandLine.Run(["token", "add", "bench-1", "--scope", "bench", "--data", store.Folder], output, TextWriter.Null));
        Assert.Matches("bench-1 +bench +stands", output.ToString());
        Assert.Matches("first +administrator +revoked", output.ToString());
    }

    [Fact]
    public void An_end_is_said_in_days_hours_or_as_a_day()
    {
        Assert.Equal(Now.AddDays(90), Expiry.Of("90d", Now));
        Assert.Equal(Now.AddHours(12), Expiry.Of("12h", Now));
        Assert.Equal(new DateTimeOffset(2027, 6, 30, 0, 0, 0, TimeSpan.Zero), Expiry.Of("2027-06-30", Now));
        Assert.All(s_noTimeToCome, w => Assert.Null(Expiry.Of(w, Now)));
    }

    private static async Task<string> Said(StoreOfTokens store, Func<TokenKeeper, Task> work)
    {
        var output = new StringWriter();
        await work(new TokenKeeper(store.Store, new FakeTimeProvider(Now), output));
        return output.ToString();
    }
}
