using System.Collections.Immutable;
using System.Net.Sockets;
using RebuildApi.Storage;

namespace RebuildApi.Server.Webhooks;

/// <summary>Sends one message once.</summary>
public sealed class Courier(ReceiverHttp http, SecretKeeper keeper, TimeProvider time)
{
    private const string Json = "application/json";

    /// <summary>Sends it, signed with each secret that counts now.</summary>
    /// <returns>The status, which is one of success.</returns>
    /// <exception cref="DeliveryFailedException">It did not arrive, or was not taken.</exception>
    public async ValueTask<int> Send(Webhook webhook, ImmutableArray<WebhookSecret> secrets, WebhookMessage message, CancellationToken cancellation)
    {
        using var request = Signed(webhook, secrets, message);
        var status = await Sent(request, cancellation);
        return status is >= 200 and < 300 ? status : throw new DeliveryFailedException(status, Words(status));
    }

    private async Task<int> Sent(HttpRequestMessage request, CancellationToken cancellation)
    {
        try
        {
            return await http.Send(request, cancellation);
        }
        catch (HttpRequestException e)
        {
            throw new DeliveryFailedException(null, Innermost(e).Message);
        }
        catch (Exception e) when (e is IOException or SocketException or ReceiverRefusedException)
        {
            throw new DeliveryFailedException(null, e.Message);
        }
    }

    private HttpRequestMessage Signed(Webhook webhook, ImmutableArray<WebhookSecret> secrets, WebhookMessage message)
    {
        var now = time.GetUtcNow();
        var request = new HttpRequestMessage(HttpMethod.Post, new Uri(webhook.Address)) { Content = new ByteArrayContent(message.Body) };
        request.Content.Headers.ContentType = new(Json);
        request.Headers.Add("User-Agent", "RebuildApi");
        request.Headers.Add("webhook-id", message.Id);
        request.Headers.Add("webhook-timestamp", WebhookSignature.Stamp(now));
        request.Headers.Add("webhook-signature", string.Join(' ', keeper.Open(secrets).Select(s => WebhookSignature.Of(s.Secret, message.Id, now, message.Body))));
        return request;
    }

    private static string Words(int status) =>
        status is >= 300 and < 400 ? "It sent us elsewhere, and redirects are not followed." : FormattableString.Invariant($"It answered {status}.");

    private static Exception Innermost(Exception e) => e.InnerException is { } inner ? Innermost(inner) : e;
}

/// <summary>A message did not arrive, or was not taken.</summary>
/// <param name="status">What the receiver answered; null when it answered nothing.</param>
/// <param name="words">What was wrong.</param>
public sealed class DeliveryFailedException(int? status, string words) : Exception(words)
{
    /// <summary>What the receiver answered; null when it answered nothing.</summary>
    public int? Status => status;

    /// <summary>Whether the receiver wants nothing more.</summary>
    public bool IsGone => status == StatusCodes.Status410Gone;
}
