using System.Globalization;
using RebuildApi.Storage;

namespace RebuildApi.Server.Access;

/// <summary>
/// <c>token add | list | revoke</c>: works on the data folder itself, also while the service runs. Whoever can write the folder is its master anyway, so it
/// asks for no token: this is how a lost administrator's token is mended.
/// </summary>
public sealed class TokenCommand(IStore store, TimeProvider time, TextWriter output, TextWriter error)
{
    /// <summary>How it is used.</summary>
    public const string Usage = """
        usage: token add NAME --scope read|bench|office|administrator [--expires 90d] [settings]
               token list [settings]
               token revoke NAME [settings]
          NAME       the bench, program or person that gets it; never given twice
          --expires  from when it no longer counts: 90d, 12h, or a day such as 2027-06-30; never when not said
          settings   such as --Rebuild:DataFolder=/var/lib/rebuild
        The secret is written to standard output, once:  export TOKEN=$(... token add invoicing --scope office)

        """;

    /// <summary>Runs it.</summary>
    /// <returns>0 when it was done; 1 when it could not be; 2 when the arguments are not understood.</returns>
    public async Task<int> Run(string[] words) => words switch
    {
        ["list"] => await List(),
        ["revoke", var name] => await Revoke(name),
        ["add", var name, "--scope", var scope] => await Add(name, scope, null),
        ["add", var name, "--scope", var scope, "--expires", var expires] => await Add(name, scope, expires),
        _ => await NotUnderstood("The arguments are not understood."),
    };

    private async Task<int> Add(string name, string word, string? until)
    {
        if (!Requests.IdAttribute.IsId(name))
            return await NotUnderstood($"{name} can't be a name: letters, digits, dots, hyphens and underscores, up to 64.");
        if (Scopes.Of(word) is not { } scope)
            return await NotUnderstood($"There is no scope {word}.");
        var expires = until is null ? null : Expiry.Of(until, time.GetUtcNow());
        if (until is not null && expires is null)
            return await NotUnderstood($"{until} is not a time to come, such as 90d, 12h or 2027-06-30.");
        try
        {
            await output.WriteLineAsync(await TokenDesk.Issue(store, new NewToken(name, scope, expires), time));
            await error.WriteLineAsync($"{name} may {string.Join("; ", Scopes.All.Where(s => s.Scope <= scope).Select(s => s.May))}. The secret is shown this once.");
            return 0;
        }
        catch (DuplicateIdException e)
        {
            return await Failed(e.Message + " A name is never given twice; choose another.");
        }
    }

    private async Task<int> List()
    {
        var used = await store.TokenUses(default);
        foreach (var token in await store.All<AccessToken>(ShopFilter.Every, default))
        {
            var state = token.Revoked is { } at ? "revoked " + Day(at) : token.CountsAt(time.GetUtcNow()) ? "stands" : "expired";
            var last = used.TryGetValue(token.Name, out var seen) ? Day(seen) : "never";
            await output.WriteLineAsync($"{token.Name,-24} {token.Scope,-14} {state,-20} expires {(token.Expires is { } end ? Day(end) : "never"),-12} last used {last}");
        }

        return 0;
    }

    private async Task<int> Revoke(string name)
    {
        if (await store.Find<AccessToken>(name, default) is null)
            return await Failed($"There is no token {name}.");
        await store.Write(TokenDesk.ByCommand("token revoke"), session =>
            Results.Answer.Changed(TokenDesk.Revoke(session, session.Find<AccessToken>(name)!, TokenDesk.Console, time.GetUtcNow()).Name), default);
        await error.WriteLineAsync($"{name} is revoked. A service that runs takes notice within two seconds.");
        return 0;
    }

    private async Task<int> NotUnderstood(string why)
    {
        await error.WriteAsync(why + Environment.NewLine + Usage);
        return 2;
    }

    private async Task<int> Failed(string why)
    {
        await error.WriteLineAsync(why);
        return 1;
    }

    private static string Day(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
