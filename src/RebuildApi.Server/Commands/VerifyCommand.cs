using System.CommandLine;
using System.Globalization;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Commands;

/// <summary><c>verify</c>: walks the hash chain of the shop, or of a backup, and says whether it still stands as it was written.</summary>
public static class VerifyCommand
{
    /// <summary>The command.</summary>
    public static Command Make()
    {
        var backup = new Argument<string?>("backup") { Description = "A backup's folder, or a copy of a database; the shop itself when not said.", Arity = ArgumentArity.ZeroOrOne };
        var head = new Option<string?>("--head") { Description = "A head that was noted earlier: says whether the chain still holds it.", HelpName = "hash" };
        return ToldCommand.OnShop("verify", "Walks the hash chain, works every hash out again, holds the tables against it, and names the first entry that is wrong. The service may run.", """
            Ends with 0 when all is as it was written, 1 when it is not, 2 when it can't be read.

            Examples:
              verify
              verify --head 1c0f…e9        (64 hex digits, as noted from an earlier run)
              verify data/backups/20260302T020000000Z
            """, [backup, head],
            (shop, asked, cancellation) => Run(asked.GetValue(backup), asked.GetValue(head)?.ToLowerInvariant(), shop, asked.InvocationConfiguration.Output, cancellation));
    }

    internal static async Task<int> Run(string? backup, string? head, ShopFolder shop, TextWriter output, CancellationToken cancellation)
    {
        var question = new ChainQuestion(head, Bar.On("entries"));
        if (backup is null)
        {
            await using var store = shop.OpenToRead();
            return await Say(await store.VerifyChain(question, cancellation), head, [], output);
        }

        var found = shop.Backups(null).Check(backup, question, cancellation);
        return await Say(found.Report.Chain, head, [.. found.Problems], output);
    }

    private static async Task<int> Say(ChainReport report, string? head, IReadOnlyList<string> problems, TextWriter output)
    {
        var said = VerificationWire.From(report, head);
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"entries  {said.Entries}"));
        await output.WriteLineAsync($"head     {(said.Head.Length == 0 ? "none" : said.Head)}");
        if (said.NotedAt is { } noted)
            await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"noted    the noted head is entry {noted}; nothing up to there was changed"));
        foreach (var erasure in said.Erasures)
            await output.WriteLineAsync($"erased   {erasure.Words()}");
        foreach (var problem in problems)
            await output.WriteLineAsync($"problem  {problem}");
        if (said.Why is { } why)
            await output.WriteLineAsync(said.FirstBroken is { } entry ? string.Create(CultureInfo.InvariantCulture, $"BROKEN   entry {entry}: {why}") : $"BROKEN   {why}");
        var good = said.Intact && problems.Count == 0;
        await output.WriteLineAsync(good ? $"intact   {said.Proves}\nbut      {said.DoesNotProve}" : "NOT as it was written.");
        return good ? 0 : 1;
    }
}
