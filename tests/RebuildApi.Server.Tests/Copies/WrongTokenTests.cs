using System.Net;
using RebuildApi.Server.Access;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Copies;

/// <summary>Who guesses tokens at one copy of the service and then at another is slowed as if there were one.</summary>
public sealed class WrongTokenTests : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("rebuild-guess-test-");
    private readonly ShopServer _one;
    private readonly ShopServer _other;

    public WrongTokenTests() => (_one, _other) = (ShopServer.Over(_folder).With("Logging:LogLevel:Default", "None"), ShopServer.Over(_folder).With("Logging:LogLevel:Default", "None"));

    [PostgresFact]
    public async Task Guesses_count_over_copies_and_a_right_token_is_not_slowed()
    {
        using var first = _one.CreateClient();
        using var right = _other.CreateClient();

        Assert.All(await Guess(WrongTokens.Limit.AtOnce / 2, _one), c => Assert.Equal(HttpStatusCode.Unauthorized, c));
        Assert.All(await Guess(WrongTokens.Limit.AtOnce / 2, _other), c => Assert.Equal(HttpStatusCode.Unauthorized, c));
        Assert.Contains(HttpStatusCode.TooManyRequests, await Guess(WrongTokens.Limit.AtOnce / 2, _one));
        Assert.Contains(HttpStatusCode.TooManyRequests, await Guess(WrongTokens.Limit.AtOnce / 2, _other));
        Assert.NotNull(await right.Read("/v1/units"));
    }

    [PostgresFact]
    public async Task Where_nothing_can_be_counted_together_each_counts_for_itself_and_nobody_is_locked_out()
    {
        using var first = _one.CreateClient();
        using var right = _other.CreateClient();
        _one.Meddle("ALTER TABLE tries RENAME TO tries_no_more");

        Assert.All(await Guess(WrongTokens.Limit.AtOnce, _one), c => Assert.Equal(HttpStatusCode.Unauthorized, c));
        Assert.Contains(HttpStatusCode.TooManyRequests, await Guess(WrongTokens.Limit.AtOnce / 2, _one));
        Assert.NotNull(await right.Read("/v1/units"));
    }

    public async ValueTask DisposeAsync()
    {
        await _one.DisposeAsync();
        await _other.DisposeAsync();
        _one.Drop();
        _folder.Delete(recursive: true);
    }

    private static async Task<List<HttpStatusCode>> Guess(int times, ShopServer at)
    {
        var codes = new List<HttpStatusCode>();
        for (var i = 0; i < times; i++)
        {
            using var guess = at.ClientWith(Secret.New());
            using var answer = await guess.GetAsync("/v1/units");
            codes.Add(answer.StatusCode);
        }

        return codes;
    }
}
