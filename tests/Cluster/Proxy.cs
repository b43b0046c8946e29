using Yarp.ReverseProxy.Configuration;

namespace RebuildApi.Cluster;

/// <summary>One address before several copies of the service. A copy that does not answer is left out until it does again.</summary>
internal static class Proxy
{
    public static async Task<int> Run(string listen, string[] copies)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls(listen);
        builder.Logging.SetMinimumLevel(LogLevel.Warning).AddFilter("Yarp", LogLevel.None);
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Limits.MaxRequestBodySize = null);
        builder.Services.AddReverseProxy().LoadFromMemory([Everything], [Copies(copies)]);
        var app = builder.Build();
        app.MapReverseProxy();
        await app.RunAsync();
        return 0;
    }

    private static readonly RouteConfig Everything = new() { RouteId = "all", ClusterId = "copies", Match = new RouteMatch { Path = "{**all}" } };

    private static ClusterConfig Copies(string[] addresses) => new()
    {
        ClusterId = "copies",
        LoadBalancingPolicy = "RoundRobin",
        HealthCheck = new HealthCheckConfig
        {
            // The copy that died is found by the first request that it fails, one that came back by being asked.
            Passive = new PassiveHealthCheckConfig { Enabled = true, Policy = "TransportFailureRate", ReactivationPeriod = TimeSpan.FromSeconds(2) },
            Active = new ActiveHealthCheckConfig { Enabled = true, Interval = TimeSpan.FromSeconds(1), Timeout = TimeSpan.FromSeconds(2), Policy = "ConsecutiveFailures", Path = "/health/live" },
        },
        Metadata = new Dictionary<string, string> { ["TransportFailureRateHealthPolicy.RateLimit"] = "0.01", ["ConsecutiveFailuresHealthPolicy.Threshold"] = "1" },
        // Streams of events stay open for as long as somebody listens.
        HttpRequest = new Yarp.ReverseProxy.Forwarder.ForwarderRequestConfig { ActivityTimeout = TimeSpan.FromMinutes(10) },
        Destinations = addresses.Select((address, i) => (Name: $"copy-{i + 1}", Address: address)).ToDictionary(c => c.Name, c => new DestinationConfig { Address = c.Address }),
    };
}
