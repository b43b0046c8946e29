namespace RebuildApi.Storage.Tests;

/// <summary>Tokens as records of the shop, and when they were last used.</summary>
public class TokenTests
{
    private static readonly AccessToken Bench = new("bench-1", "bench", new string('a', 64), DateTimeOffset.UnixEpoch, "console", DateTimeOffset.UnixEpoch.AddHours(1), null, null, 0);

    [Fact]
    public async Task Issuing_and_revoking_lie_in_the_chain()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.Put(Bench, 0));
        await temp.Write(s => s.Put(Bench with { Revoked = DateTimeOffset.UnixEpoch, RevokedBy = "console" }, 1));

        var stands = await temp.Store.Find<AccessToken>("bench-1", default);
        var events = await temp.Store.Events(0, 10, default);

        Assert.Equal((2L, "console"), (stands!.Version, stands.RevokedBy));
        Assert.Equal(["token", "token"], events.Select(e => e.Kind));
        Assert.True((await temp.Store.VerifyChain(default)).Intact);
        temp.Meddle("UPDATE token SET entry = 1");
        Assert.False((await temp.Store.VerifyChain(default)).Intact);
    }

    [Fact]
    public async Task When_a_token_was_used_is_no_event_and_never_goes_back()
    {
        await using var temp = new TempStore();
        var noon = temp.Time.GetUtcNow();
        await temp.Write(s => s.Put(Bench, 0));
        await Note("bench-1", noon);
        await Note("bench-1", noon.AddHours(-1));
        await Note("nobody", noon);

        Assert.Equal([KeyValuePair.Create("bench-1", noon)], await temp.Store.TokenUses(default));
        Assert.Single(await temp.Store.Events(0, 10, default));

        Task Note(string token, DateTimeOffset at) => temp.Store.NoteTokenUses([KeyValuePair.Create(token, at)], default);
    }

    [Fact]
    public async Task An_answer_with_a_secret_is_kept_without_it()
    {
        await using var temp = new TempStore();
        var shown = Requests.Ok("the secret") with { Kept = Requests.Ok("no secret").Body };
        var first = await temp.Store.Write(Requests.Keyed("k"), _ => shown, default);
        var again = await temp.Store.Write(Requests.Keyed("k"), _ => shown, default);

        Assert.Equal(("the secret", "no secret"), (first.Text(), again.Text()));
        Assert.True(again.Replayed);
        Assert.Equal(["0"], temp.Ask("SELECT COUNT(*) || '' FROM idempotency WHERE body = CAST('the secret' AS BLOB)"));
    }

    [Fact]
    public void A_token_counts_until_its_end_or_until_it_is_taken_back()
    {
        Assert.True(Bench.CountsAt(DateTimeOffset.UnixEpoch.AddMinutes(59)));
        Assert.False(Bench.CountsAt(DateTimeOffset.UnixEpoch.AddHours(1)));
        Assert.False((Bench with { Revoked = DateTimeOffset.UnixEpoch }).CountsAt(DateTimeOffset.UnixEpoch));
        Assert.True((Bench with { Expires = null }).CountsAt(DateTimeOffset.MaxValue));
    }
}
