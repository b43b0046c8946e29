using System.Globalization;
using Microsoft.Extensions.DependencyInjection;
using RebuildApi.Server.Access;
using RebuildApi.Server.Tests.Fuzz.Rows;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.Storage;
using Xunit.Abstractions;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>
/// What the document promises can be had: each answer that it lists for an operation is brought about, and is as it says. What a walk over all operations does not
/// bring about has a row in <c>Rows</c>; an answer that nothing brings about fails.
/// </summary>
public sealed class EveryAnswerTests(ITestOutputHelper output)
{
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
        await new Situations(server, http, walk, shop).All();
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
        await walk.Rows(http, shop, EditionRows.WithoutRules);
        await walk.Known(http, shop);
        fault.Fail(new StorageUnavailableException("full", "The disk is full.", null));
        await walk.All(http, book.Forget, mayBreak: true);
        fault.Fail(new InvalidOperationException("A fault on purpose."));
        await walk.All(http, book.Forget, mayBreak: true);
        fault.Fail(null);
        await Hurried(walk);
        await Late(walk, shop);
        await OutOfTime(walk);
        await Raced(walk, shop);
        await Tangled(walk, shop);
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
    private static async Task Late(AnswerWalk walk, PlayedShop shop)
    {
        var server = ShopServer.Open().With("Rebuild:RequestSeconds", "1").With("Logging:LogLevel:Default", "None");
        await using var real = Stores.Open(server.Database);
        var (store, late) = SwitchedStore.Over(real);
        await using var opened = server.On(store);
        using var http = server.CreateClient();
        http.Timeout = TimeSpan.FromSeconds(20);
        late.Wait();
        await walk.AllThatMayBeLate(http, shop);
    }

    /// <summary>So slow that no request is looked at in time.</summary>
    private static async Task OutOfTime(AnswerWalk walk)
    {
        await using var server = ShopServer.Open().OutOfTime().With("Logging:LogLevel:Default", "None");
        using var http = server.CreateClient();
        await walk.All(http);
    }

    /// <summary>Where somebody is always faster, then nobody, under another edition of the rules.</summary>
    private static async Task Raced(AnswerWalk walk, PlayedShop shop)
    {
        var server = ShopServer.Open();
        await using var real = Stores.Open(server.Database);
        await using var opened = server.On(RacedStore.Over(real, out var raced));
        using var http = await server.WithUnit();
        await http.Bore("u1", "1.8780");
        raced.Before = () => real.Write(new WriteRequest("test", "test", null, "", DryRun: false), session =>
        {
            session.Change(session.Unit("u1")!, null);
            return StoredAnswer.Nothing;
        }, default);
        await walk.Rows(http, shop, EditionRows.Raced);
        server.LoadNewer(EditionRows.Next(family => family));
        await walk.Rows(http, shop, EditionRows.RacedMove);
        raced.Before = null;
        await walk.Rows(http, shop, EditionRows.Move);
    }

    /// <summary>Under rules whose causes and symptoms hang together too tightly for an exact answer.</summary>
    private static async Task Tangled(AnswerWalk walk, PlayedShop shop)
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        server.LoadNewer(EditionRows.Next(EditionRows.Tangle));
        await walk.Rows(http, shop, EditionRows.Tangled);
    }

    private void Judge(ApiDocument document, AnswerCheck check, AnswerWalk walk)
    {
        var told = document.Operations.SelectMany(o => o.Node["responses"]!.AsObject().Select(r => (Operation: o.ToString(), Status: r.Key))).ToArray();
        var unseen = told.Where(a => !check.Seen.ContainsKey(a)).Select(a => $"{a.Operation} {a.Status}").Order(StringComparer.Ordinal).ToArray();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{told.Length - unseen.Length} of {told.Length} answers seen"));
        Assert.True(unseen.Length == 0 && walk.Faults.IsEmpty, string.Join("\n", unseen.Select(u => "never seen: " + u).Concat(walk.Faults.Distinct().Take(40))));
    }
}
