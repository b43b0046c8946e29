using Microsoft.Extensions.Options;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server;

/// <summary>
/// Answers only to the host names it was told, letter for letter. Without this a page of another site could reach it through a name that
/// the site makes point to this machine.
/// </summary>
public sealed class HostGuard(RequestDelegate next, IOptions<ServerOptions> options)
{
    private readonly string[] _hosts = options.Value.Hosts;

    /// <summary>Runs the rest of the pipeline for a known host.</summary>
    public Task InvokeAsync(HttpContext http)
    {
        var host = http.Request.Host.Host;
        if (_hosts.Contains(host, StringComparer.OrdinalIgnoreCase))
            return next(http);
        throw new ProblemException(Problems.HostNotAllowed, host.Length == 0 ? "The Host header is missing." : "The Host header is not one of this service.");
    }
}
