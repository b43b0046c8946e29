using System.Globalization;
using Microsoft.Extensions.DependencyInjection;
using RebuildApi.Server.Access;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.Storage;
using Xunit.Abstractions;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>
/// What the document promises can be had: each answer that it lists for an operation is brought about, and is as it says. Those that nothing here brings about
/// yet stand by name in <c>not-brought-about.txt</c>; a new answer that nothing brings about fails, and so does a name that the document no longer has.
/// </summary>
public sealed class EveryAnswerTests(ITestOutputHelper output)
{
    private static string List => Path.Combine(AppContext.BaseDirectory, "Fuzz", "not-brought-about.txt");

    [Fact]
    public async Task Every_answer_of_the_document_is_seen()
    {
        var server = ShopServer.Open();
        await using var real = Stores.Open(server.Database);
        var (store, fault) = SwitchedStore.Over(real);
        await using var opened = server.On(store);
        using var http = server.CreateClient();
        var document = await ApiDocument.Of(http);
        var check = new AnswerCheck(document);
        var walk = new AnswerWalk(document, check);
        var shop = await PlayedShop.Play(http);
        await OtherShop.Open(server.Database);
        using (var stranger = server.CreateStranger())
            await walk.All(stranger);
        var book = server.Services.GetRequiredService<TokenBook>();
        using (var reader = await server.ClientOf(Scope.Read))
        {
            book.Forget();
            await walk.All(reader);
        }

        await walk.Refusals(http);
        await walk.Examples(http, shop);
        await walk.Odd(http, shop, 8);
        server.LosePlugins();
        await walk.Known(http, shop);
        fault.Fail(new StorageUnavailableException("full", "The disk is full.", null));
        await walk.All(http, book.Forget, mayBreak: true);
        fault.Fail(new InvalidOperationException("A fault on purpose."));
        await walk.All(http, book.Forget, mayBreak: true);
        fault.Fail(null);
        await Hurried(walk);
        await Late(walk);
        Judge(document, check, walk);
    }

    /// <summary>Faster than the service was told to take.</summary>
    private static async Task Hurried(AnswerWalk walk)
    {
        await using var server = ShopServer.Open().With("Rebuild:RequestsPerMinute", "1");
        using var http = server.CreateClient();
        using var first = await http.GetAsync("/health/live");
        await walk.All(http);
    }

    /// <summary>With records that never answer.</summary>
    private static async Task Late(AnswerWalk walk)
    {
        var server = ShopServer.Open().With("Rebuild:RequestSeconds", "1").With("Logging:LogLevel:Default", "None");
        await using var real = Stores.Open(server.Database);
        var (store, late) = SwitchedStore.Over(real);
        await using var opened = server.On(store);
        using var http = server.CreateClient();
        http.Timeout = TimeSpan.FromSeconds(20);
        late.Wait();
        await walk.AllThatMayBeLate(http);
    }

    private void Judge(ApiDocument document, AnswerCheck check, AnswerWalk walk)
    {
        var told = document.Operations.SelectMany(o => o.Node["responses"]!.AsObject().Select(r => (Operation: o.ToString(), Status: r.Key))).ToArray();
        var unseen = told.Where(a => !check.Seen.ContainsKey(a)).Select(a => $"{a.Operation} {a.Status}").Order(StringComparer.Ordinal).ToArray();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{told.Length - unseen.Length} of {told.Length} answers seen"));
        if (Environment.GetEnvironmentVariable("RB_ACCEPT") == "1")
            File.WriteAllLines(List + ".received", unseen);
        Assert.True(walk.Faults.IsEmpty, string.Join("\n", walk.Faults.Distinct().Take(40)));
        var known = File.ReadAllLines(List);
        Assert.Empty(unseen.Except(known));
        Assert.Empty(known.Except(told.Select(a => $"{a.Operation} {a.Status}")));
    }
}
