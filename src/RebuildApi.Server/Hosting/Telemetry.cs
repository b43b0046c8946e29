using OpenTelemetry;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace RebuildApi.Server;

/// <summary>Traces of requests, and metrics of the framework, for those who collect them.</summary>
public static class Telemetry
{
    private static readonly string[] Meters = ["Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel", "System.Runtime"];

    /// <summary>Sends them to an address; registers nothing at all when there is none.</summary>
    public static void AddTelemetry(this IServiceCollection services, string? to)
    {
        if (Checked(to) is not { } address)
            return;
        services.AddOpenTelemetry()
            .ConfigureResource(r => r.AddService("rebuild-api", serviceVersion: typeof(Telemetry).Assembly.GetName().Version?.ToString(3)))
            .WithTracing(t => t.AddAspNetCoreInstrumentation().AddOtlpExporter(o => o.Endpoint = address))
            .WithMetrics(m => m.AddMeter(Meters).AddOtlpExporter(o => o.Endpoint = address));
    }

    /// <summary>Reads the setting.</summary>
    /// <exception cref="InvalidOperationException">It is no address.</exception>
    public static Uri? Checked(string? to)
    {
        if (string.IsNullOrEmpty(to))
            return null;
        return Uri.TryCreate(to, UriKind.Absolute, out var address) && address.Scheme is ("http" or "https")
            ? address
            : throw new InvalidOperationException($"{ServerOptions.Section}:{nameof(ServerOptions.TelemetryTo)} is {to}, which is not an address such as http://127.0.0.1:4317.");
    }
}
