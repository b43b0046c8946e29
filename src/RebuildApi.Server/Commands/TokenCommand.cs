using System.CommandLine;
using RebuildApi.Server.Access;

namespace RebuildApi.Server.Commands;

/// <summary><c>token</c>: who may come in, on the data folder itself, whether or not the service runs.</summary>
public static class TokenCommand
{
    /// <summary>The command.</summary>
    public static Command Make() => new("token", "Issues, lists and revokes the tokens that benches and programs show.")
    {
        MakeAdd(),
        MakeList(),
        MakeRevoke(),
    };

    private static Command MakeAdd()
    {
        var name = new Argument<string>("name") { Description = "The bench, program or person that gets it; never given twice." };
        var scope = new Option<string>("--scope") { Description = "What it may do: read, bench, office or administrator, each including those before it.", HelpName = "scope", Required = true };
        var expires = new Option<string?>("--expires") { Description = "From when it no longer counts: 90d, 12h, or a day; never when not said.", HelpName = "time" };
        return ToldCommand.OnShop("add", "Issues a token and prints its secret, once. This mends a lost administrator's token, too.", """
            Examples:
              token add bench-1 --scope bench --expires 90d
              export TOKEN=$(... token add invoicing --scope office)
            """, [name, scope, expires],
            (shop, asked, _) => With(shop, asked, keeper => keeper.Add(asked.GetValue(name)!, asked.GetValue(scope)!, asked.GetValue(expires))));
    }

    private static Command MakeList() =>
        ToldCommand.OnShop("list", "Lists every token with its scope, whether it counts, and when it was last used.", """
            Example:
              token list
            """, [],
            (shop, asked, _) => With(shop, asked, keeper => keeper.List()));

    private static Command MakeRevoke()
    {
        var name = new Argument<string>("name") { Description = "The token." };
        return ToldCommand.OnShop("revoke", "Takes a token back for good; a service that runs takes notice within two seconds.", """
            Example:
              token revoke bench-1
            """, [name],
            (shop, asked, _) => With(shop, asked, keeper => keeper.Revoke(asked.GetValue(name)!)));
    }

    private static async Task<int> With(ShopFolder shop, ParseResult asked, Func<TokenKeeper, Task> work)
    {
        await using var store = shop.OpenToWrite();
        await work(new TokenKeeper(store, TimeProvider.System, asked.InvocationConfiguration.Output));
        return 0;
    }
}
