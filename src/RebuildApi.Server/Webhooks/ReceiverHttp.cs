using System.Net;
using System.Net.Sockets;

namespace RebuildApi.Server.Webhooks;

/// <summary>The HTTP client for receivers: connects only where it is allowed, follows no redirect, keeps no cookie, and reads next to nothing of what comes back.</summary>
public sealed class ReceiverHttp : IDisposable
{
    private const int MostHeaders = 16;
    private const int MostDrained = 64 << 10;

    private readonly HttpMessageInvoker _http;
    private readonly AllowedReceivers _allowed;

    /// <summary>Makes it.</summary>
    public ReceiverHttp(AllowedReceivers allowed)
    {
        _allowed = allowed;
        _http = new HttpMessageInvoker(new SocketsHttpHandler
        {
            ConnectCallback = Connect,
            AllowAutoRedirect = false,
            UseProxy = false,
            UseCookies = false,
            ActivityHeadersPropagator = null,
            AutomaticDecompression = DecompressionMethods.None,
            MaxResponseHeadersLength = MostHeaders,
            // What is left of an answer is read up to this only to use the connection again.
            MaxResponseDrainSize = MostDrained,
            ResponseDrainTimeout = TimeSpan.FromSeconds(1),
            PooledConnectionLifetime = TimeSpan.FromMinutes(5),
        });
    }

    /// <summary>Sends a request; only the status of the answer is looked at.</summary>
    public async Task<int> Send(HttpRequestMessage request, CancellationToken cancellation)
    {
        using var response = await _http.SendAsync(request, cancellation);
        return (int)response.StatusCode;
    }

    /// <inheritdoc/>
    public void Dispose() => _http.Dispose();

    private async ValueTask<Stream> Connect(SocketsHttpConnectionContext context, CancellationToken cancellation)
    {
        var addresses = await _allowed.Resolve(context.DnsEndPoint.Host, cancellation);
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(addresses, context.DnsEndPoint.Port, cancellation);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }
}
