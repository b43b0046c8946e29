using System.Net;
using Microsoft.Extensions.Options;

namespace RebuildApi.Server.Webhooks;

/// <summary>What sends webhooks.</summary>
public static class WebhookServices
{
    /// <summary>Registers it.</summary>
    public static void AddWebhooks(this IServiceCollection services)
    {
        services.AddSingleton<ResolveName>(Dns.GetHostAddressesAsync);
        services.AddSingleton<AllowedReceivers>();
        services.AddSingleton<ReceiverHttp>();
        services.AddSingleton(s => new SecretKeeper(s.GetRequiredService<IOptions<ServerOptions>>().Value.Keys));
        services.AddSingleton<Courier>();
        services.AddSingleton<WebhookSender>();
        services.AddSingleton<WebhookDesk>();
        services.AddSingleton<Redelivery>();
        services.AddHostedService(s => s.GetRequiredService<WebhookSender>());
    }
}
