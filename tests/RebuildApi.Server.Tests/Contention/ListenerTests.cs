using System.Globalization;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;
using Xunit.Abstractions;

namespace RebuildApi.Server.Tests.Contention;

/// <summary>Many listeners on real connections: every event reaches every one, none missed and none doubled, whatever is cut.</summary>
public sealed class ListenerTests(ITestOutputHelper output)
{
    private const int Listeners = 64;
    private const int Benches = 16;
    private const int Each = 6;

    [Fact]
    public async Task Each_of_64_listeners_hears_everything_once_and_goes_on_where_it_was_cut_off()
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(3));
        await using var server = ShopServer.Open().With("Rebuild:Listen", "http://127.0.0.1:0");
        server.UseKestrel(0);
        server.StartServer();
        using var http = await server.WithUnit();
        var first = (await Heard(http, 0, patience.Token)).Last;
        var last = new TaskCompletionSource<long>(TaskCreationOptions.RunContinuationsAsynchronously);
        var listening = Enumerable.Range(0, Listeners).Select(i => Task.Run(() => Listen(server, i, first, last.Task, patience.Token))).ToArray();

        await Task.WhenAll(Enumerable.Range(0, Benches).Select(bench => Task.Run(() => Read(http, bench))));
        var all = await Heard(http, first, patience.Token);
        last.SetResult(all.Last);
        var heard = await Task.WhenAll(listening);

        Assert.True(all.Ids.Count >= Benches * Each);
        Assert.All(heard, h => Assert.Equal(all.Ids, h.Ids));
        var late = heard.SelectMany(h => h.Late).Order().ToArray();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{Listeners} listeners, {all.Ids.Count} events, {late.Length} deliveries: median {late[late.Length / 2]:0} ms, 99 % within {late[late.Length * 99 / 100]:0} ms, longest {late[^1]:0} ms after the commit; every third listener was cut off on the way"));
    }

    private static async Task Read(HttpClient http, int bench)
    {
        for (var n = 0; n < Each; n++)
        {
            await http.Make("/v1/units/u1/measurements", $$"""
                { "person": "Ada", "bench": "bench-{{bench}}", "measurements": [{ "id": "m-{{bench}}-{{n}}", "at": "third-gear/length", "readings": [{ "value": 1.2045, "unit": "in" }] }] }
                """);
        }
    }

    /// <summary>Listens until the last event; every third listener hangs up after each few events and asks again from where it was.</summary>
    private static async Task<Told> Listen(ShopServer server, int number, long after, Task<long> last, CancellationToken stop)
    {
        var told = new Told([], [], after);
        using var http = server.CreateClient();
        while (!(last.IsCompleted && told.Last >= await last))
            told = await Follow(http, told, number % 3 == 0 ? 7 : int.MaxValue, last, stop);
        return told;
    }

    private static async Task<Told> Follow(HttpClient http, Told told, int most, Task<long> last, CancellationToken stop)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri("/v1/events", UriKind.Relative));
        request.Headers.Add("Last-Event-ID", told.Last.ToString(CultureInfo.InvariantCulture));
        using var answer = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, stop);
        using var reader = new StreamReader(await answer.Content.ReadAsStreamAsync(stop));
        for (var n = 0; n < most;)
        {
            var line = reader.ReadLineAsync(stop).AsTask();
            // Nothing may come any more once the last was heard.
            if (await Task.WhenAny(line, last) == last && told.Last >= await last)
                return told;
            if (await line is not { } text)
                return told;
            if (!text.StartsWith("data: ", StringComparison.Ordinal))
                continue;
            told = told.With(JsonNode.Parse(text[6..])!, TimeProvider.System.GetUtcNow());
            n++;
        }

        return told;
    }

    private static async Task<Told> Heard(HttpClient http, long after, CancellationToken stop)
    {
        var lines = (await http.GetStringAsync(new Uri($"/v1/events?after={after}&seconds=0", UriKind.Relative), stop)).Split('\n');
        return lines.Where(l => l.StartsWith("data: ", StringComparison.Ordinal))
            .Aggregate(new Told([], [], after), (told, l) => told.With(JsonNode.Parse(l[6..])!, TimeProvider.System.GetUtcNow()));
    }

    private sealed record Told(List<long> Ids, List<double> Late, long Last)
    {
        public Told With(JsonNode e, DateTimeOffset now)
        {
            Ids.Add((long)e["sequence"]!);
            Late.Add((now - (DateTimeOffset)e["time"]!).TotalMilliseconds);
            return this with { Last = Ids[^1] };
        }
    }
}
