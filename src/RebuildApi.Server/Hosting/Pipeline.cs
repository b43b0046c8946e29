using RebuildApi.Server.Access;
using RebuildApi.Server.Errors;
using RebuildApi.Server.OpenApi;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server;

/// <summary>What every request passes through, in this order.</summary>
public static class Pipeline
{
    /// <summary>Sets it up.</summary>
    public static WebApplication UsePipeline(this WebApplication app)
    {
        app.Use((http, next) =>
        {
            SecurityHeaders.Set(http);
            return next(http);
        });
        app.UseResponseCompression();
        app.UseMiddleware<ProblemMiddleware>();
        app.UseMiddleware<HostGuard>();
        app.UseMiddleware<CallerFinder>();
        app.UseMiddleware<RateGuard>();
        app.UseRouting();
        app.UseRequestTimeouts();
        app.UseMiddleware<ScopeGuard>();
        app.UseMiddleware<OriginGuard>();
        app.UseMiddleware<QueryGuard>();
        app.UseDocument();
        return app;
    }
}
