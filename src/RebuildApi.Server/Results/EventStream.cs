using System.Globalization;
using System.Text.Json;
using RebuildApi.Server.Json;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Results;

/// <summary>
/// What happens, as it happens (server-sent events, WHATWG HTML 9.2). The id of each event is its sequence number, so a client that was cut off
/// names the last one it has and misses none.
/// </summary>
/// <param name="after">Last sequence number already seen; null begins with what happens next.</param>
/// <param name="unit">Only what belongs to this unit; null for all.</param>
/// <param name="atMost">How long it goes on; zero gives what is there and ends.</param>
public sealed class EventStream(long? after, string? unit, TimeSpan atMost) : IResult
{
    // Proxies and browsers drop a connection that is silent for long.
    private static readonly TimeSpan Silence = TimeSpan.FromSeconds(15);
    private const int AtOnce = 500;

    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var services = httpContext.RequestServices;
        var (store, time) = (services.GetRequiredService<IStore>(), services.GetRequiredService<TimeProvider>());
        using var ended = new CancellationTokenSource(atMost > TimeSpan.Zero ? atMost : Timeout.InfiniteTimeSpan, time);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(
            ended.Token, httpContext.RequestAborted, services.GetRequiredService<IHostApplicationLifetime>().ApplicationStopping);
        // Asked before anything is written, so that records that can't be read still become a problem and not a torn answer.
        var seen = after ?? await store.NextEvent(-1, stop.Token);
        await store.Events(seen, 1, stop.Token);
        httpContext.Response.ContentType = "text/event-stream";
        httpContext.Response.Headers.CacheControl = "no-store";
        try
        {
            await httpContext.Response.WriteAsync("retry: 2000\n\n", stop.Token);
            await Follow(httpContext.Response, store, time, seen, stop.Token);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // The time is over, the client has gone or the service stops: the client asks again from where it was.
        }
    }

    private async Task Follow(HttpResponse response, IStore store, TimeProvider time, long seen, CancellationToken stop)
    {
        while (true)
        {
            var events = await store.Events(seen, AtOnce, stop);
            foreach (var e in events.Where(e => unit is null || e.Unit == unit))
                await response.WriteAsync(Written(e), stop);
            seen = events.IsEmpty ? seen : events[^1].Sequence;
            await response.Body.FlushAsync(stop);
            if (events.Length == AtOnce)
                continue;
            if (atMost <= TimeSpan.Zero)
                return;
            await Wait(response, store, time, seen, stop);
        }
    }

    private static async Task Wait(HttpResponse response, IStore store, TimeProvider time, long seen, CancellationToken stop)
    {
        try
        {
            await store.NextEvent(seen, stop).WaitAsync(Silence, time, stop);
        }
        catch (TimeoutException)
        {
            await response.WriteAsync(": nothing new\n\n", stop);
        }
    }

    private static string Written(StoreEvent e) =>
        $"id: {e.Sequence.ToString(CultureInfo.InvariantCulture)}\ndata: {JsonSerializer.Serialize(EventWire.From(e), WireJson.Options)}\n\n";
}
