using System.Collections.Concurrent;
using System.Net.Http.Json;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.Storage;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Server.Tests.Records;

public sealed class StoppingTests
{
    [Fact]
    public async Task A_stop_ends_streams_cleanly_and_loses_nothing_that_was_acknowledged()
    {
        var folder = Directory.CreateTempSubdirectory("rebuild-stop-test-");
        await using var app = RebuildApplication.Create([$"--Rebuild:DataFolder={folder.FullName}", "--Rebuild:Listen=http://127.0.0.1:0", "--Rebuild:Access=this-machine", "--Logging:LogLevel:Default=None"]);
        await app.StartAsync();
        using var http = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
        var acknowledged = new ConcurrentBag<string>();
        var benches = Enumerable.Range(0, 8).Select(bench => Write(http, bench, acknowledged)).ToArray();
        var listener = http.GetStringAsync("/v1/events?after=0");
        while (acknowledged.Count < 40)
            await Task.Delay(10);

        await app.StopAsync();
        var events = await listener;
        await Task.WhenAll(benches);
        await app.DisposeAsync();

        await using var store = SqliteStore.Open(new StoreOptions(Path.Combine(folder.FullName, "shop.db"), TimeProvider.System));
        var kept = new List<string>();
        for (string? after = null; ;)
        {
            var page = await store.Units(after, 1000, null, default);
            kept.AddRange(page.Items.Select(u => u.Id));
            if ((after = page.Next) is null)
                break;
        }

        Assert.Empty(acknowledged.Except(kept));
        Assert.True((await store.VerifyChain(default)).Intact);
        Assert.EndsWith("\n\n", events, StringComparison.Ordinal);
        await store.DisposeAsync();
        folder.Delete(recursive: true);
    }

    private static async Task Write(HttpClient http, int bench, ConcurrentBag<string> acknowledged)
    {
        try
        {
            for (var number = 0; ; number++)
            {
                var id = FormattableString.Invariant($"u-{bench}-{number}");
                using var answer = await http.PostAsJsonAsync("/v1/units", new { id, tag = "T", family = ShopServer.Family, person = "Ada" });
                if (!answer.IsSuccessStatusCode)
                    return;
                acknowledged.Add(id);
            }
        }
        catch (HttpRequestException)
        {
            // The service takes nothing new any more.
        }
    }
}
