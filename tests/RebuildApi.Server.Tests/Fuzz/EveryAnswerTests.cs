using System.Globalization;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.Storage;
using Xunit.Abstractions;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>What the document promises can be had: each answer that it lists for an operation is brought about, and is as it says.</summary>
public sealed class EveryAnswerTests(ITestOutputHelper output)
{
    // What can happen to any request; brought about once for all, not at each address.
    private static readonly string[] OfTheWhole = ["500", "503", "504"];

    [Fact]
    public async Task Every_answer_of_the_document_is_seen()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var document = await ApiDocument.Of(http);
        var check = new AnswerCheck(document);
        var walk = new AnswerWalk(document, check);
        await walk.Names(http);
        await walk.Examples(http, await PlayedShop.Play(http));
        await walk.Refusals(http);
        await walk.Hurried();
        await walk.WithoutRules();
        await walk.WithoutRecords(_ => new StorageUnavailableException("full", "The disk is full.", null));
        await walk.WithoutRecords(_ => new InvalidOperationException("A fault on purpose."));
        await walk.WithoutRecords(Late, ("Rebuild:RequestSeconds", "1"));
        var unseen = document.Operations
            .SelectMany(o => o.Node["responses"]!.AsObject().Select(r => (Operation: o.ToString(), Status: r.Key)))
            .Where(a => !OfTheWhole.Contains(a.Status) && !check.Seen.ContainsKey(a)).Select(a => $"{a.Operation} {a.Status}").ToArray();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{check.Seen.Count} answers seen, {unseen.Length} not"));
        Assert.True(walk.Faults.Count == 0 && unseen.Length == 0, string.Join("\n", walk.Faults.Take(40).Concat(unseen.Select(u => "not seen: " + u))));
        Assert.Empty(OfTheWhole.Except(check.Seen.Keys.Select(s => s.Status)));
    }

    private static OperationCanceledException Late(CancellationToken cancellation)
    {
        cancellation.WaitHandle.WaitOne();
        return new OperationCanceledException(cancellation);
    }
}
