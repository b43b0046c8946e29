using System.Globalization;
using RebuildApi.Server.Access;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Commands;

/// <summary>
/// Issues, lists and revokes tokens on the data folder itself, also while the service runs. Whoever can write the folder is its master anyway, so no token is asked
/// for: this is how a lost administrator's token is mended.
/// </summary>
public sealed class TokenKeeper(IStore store, TimeProvider time, TextWriter output)
{
    /// <summary>Issues a token and writes its secret, alone, so that a script can take it.</summary>
    /// <param name="name">The bench, program or person that gets it.</param>
    /// <param name="word">The word for its scope.</param>
    /// <param name="until">From when it no longer counts: 90d, 12h or a day; null for never.</param>
    /// <exception cref="ArgumentException">One of them can't be used; the words say why.</exception>
    public async Task Add(string name, string word, string? until)
    {
        if (!IdAttribute.IsId(name))
            throw new ArgumentException($"{name} can't be a name: letters, digits, dots, hyphens and underscores, up to 64.");
        var scope = Scopes.Of(word) ?? throw new ArgumentException($"There is no scope {word}. There are: {string.Join(", ", Scopes.All.Select(s => s.Scope.Word()))}.");
        var expires = until is null ? (DateTimeOffset?)null : Expiry.Of(until, time.GetUtcNow())
            ?? throw new ArgumentException($"{until} is not a time to come, such as 90d, 12h or 2027-06-30.");
        try
        {
            await output.WriteLineAsync(await TokenDesk.Issue(store, new NewToken(name, scope, expires), time));
        }
        catch (DuplicateIdException e)
        {
            throw new ArgumentException(e.Message + " A name is never given twice; choose another.", e);
        }
    }

    /// <summary>Lists every token, without secrets.</summary>
    public async Task List()
    {
        var used = await store.TokenUses(default);
        foreach (var token in await store.All<AccessToken>(ShopFilter.Every, default))
        {
            var state = token.Revoked is { } at ? "revoked " + Day(at) : token.CountsAt(time.GetUtcNow()) ? "stands" : "expired";
            var last = used.TryGetValue(token.Name, out var seen) ? Day(seen) : "never";
            await output.WriteLineAsync($"{token.Name,-24} {token.Scope,-14} {state,-20} expires {(token.Expires is { } end ? Day(end) : "never"),-12} last used {last}");
        }
    }

    /// <summary>Takes a token back. A service that runs takes notice within two seconds.</summary>
    /// <exception cref="ArgumentException">There is none of this name.</exception>
    public Task Revoke(string name) => store.Write(TokenDesk.ByCommand("token revoke"), session =>
    {
        var token = session.Find<AccessToken>(name) ?? throw new ArgumentException($"There is no token {name}.");
        TokenDesk.Revoke(session, token, TokenDesk.Console, time.GetUtcNow());
        return StoredAnswer.Nothing;
    }, default);

    private static string Day(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
