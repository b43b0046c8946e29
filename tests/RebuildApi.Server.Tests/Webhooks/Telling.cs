using System.Text.Json.Nodes;
using Microsoft.Extensions.Time.Testing;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Webhooks;

/// <summary>A service, a receiver, and a clock that only goes when it is told.</summary>
internal sealed class Telling : IAsyncDisposable
{
    private Telling(ShopServer server, LoopbackReceiver receiver, FakeTimeProvider time) => (Server, Receiver, Time, Http) = (server, receiver, time, server.CreateClient());

    public ShopServer Server { get; }

    public LoopbackReceiver Receiver { get; }

    public FakeTimeProvider Time { get; }

    public HttpClient Http { get; }

    /// <summary>The secret of the receiver that was set up.</summary>
    public string Secret { get; private set; } = "";

    public static async Task<Telling> Begin(string kinds = """["unit"]""", DirectoryInfo? folder = null)
    {
        var time = new FakeTimeProvider(DateTimeOffset.Parse("2026-03-02T08:00:00Z", System.Globalization.CultureInfo.InvariantCulture));
        var server = (folder is null ? ShopServer.Open() : ShopServer.Over(folder)).At(time);
        var telling = new Telling(server, await LoopbackReceiver.Open(), time);
        var made = await telling.Http.Make("/v1/webhooks", $$"""{ "id": "w", "name": "Invoicing", "address": "{{telling.Receiver.Address}}", "kinds": {{kinds}}, "person": "Ada" }""");
        telling.Secret = (string)made["secret"]!;
        return telling;
    }

    public Task TakeIn(string unit) => Http.Make("/v1/units", $$"""{ "id": "{{unit}}", "tag": "T-1", "family": "brackenmere-4", "person": "Ada" }""");

    /// <summary>The ids of the units that the receiver was told of, as often as it was.</summary>
    public string[] Told => [.. Receiver.Messages.Where(m => m.Type == "unit").Select(m => (string)m.Json["data"]!["id"]!)];

    public async Task<JsonObject[]> Deliveries(string? state = null) =>
        [.. (await Http.Read("/v1/webhooks/w/deliveries" + (state is null ? "" : "?state=" + state)))["items"]!.AsArray().Select(d => d!.AsObject())];

    /// <summary>Waits until something is so; the clock goes on meanwhile when that is asked for.</summary>
    public async Task Until(Func<Task<bool>> so, TimeSpan step = default)
    {
        for (var tries = 0; tries < 3000; tries++)
        {
            if (await so())
                return;
            if (step > TimeSpan.Zero)
                Time.Advance(step);
            // A real connection needs a little real time; when the clock ran on too far meanwhile, the attempt counts as late and is made again.
            await Task.Delay(step > TimeSpan.Zero ? 60 : 5);
        }

        Assert.Fail($"It never came about; told of {string.Join(", ", Told)}.");
    }

    public Task Until(Func<bool> so, TimeSpan step = default) => Until(() => Task.FromResult(so()), step);

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        await Server.DisposeAsync();
        await Receiver.DisposeAsync();
    }
}
