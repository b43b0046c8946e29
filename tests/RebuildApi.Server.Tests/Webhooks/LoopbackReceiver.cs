using System.Collections.Concurrent;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace RebuildApi.Server.Tests.Webhooks;

/// <summary>A receiver on a real connection of this machine that remembers what it was sent and behaves as it is told.</summary>
internal sealed class LoopbackReceiver : IAsyncDisposable
{
    private readonly WebApplication _app;

    private LoopbackReceiver()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Logging.ClearProviders();
        _app = builder.Build();
        _app.Run(Take);
    }

    public ConcurrentQueue<SentMessage> Messages { get; } = new();

    /// <summary>What it does with each message; takes it when nothing else is said.</summary>
    public Func<HttpContext, Task> Behaves { get; set; } = _ => Task.CompletedTask;

    public string Address => _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single() + "/events";

    public static async Task<LoopbackReceiver> Open()
    {
        var receiver = new LoopbackReceiver();
        await receiver._app.StartAsync();
        return receiver;
    }

    /// <summary>Answers with a status.</summary>
    public static Func<HttpContext, Task> With(int status) => http =>
    {
        http.Response.StatusCode = status;
        return Task.CompletedTask;
    };

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    private async Task Take(HttpContext http)
    {
        using var body = new MemoryStream();
        await http.Request.Body.CopyToAsync(body);
        Messages.Enqueue(new SentMessage(http.Request.Path, http.Request.Headers.ToDictionary(h => h.Key.ToLowerInvariant(), h => h.Value.ToString()), body.ToArray()));
        await Behaves(http);
    }
}
