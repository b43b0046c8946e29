using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.Timeouts;
using Microsoft.Extensions.DependencyInjection;

namespace RebuildApi.Server.Tests.Kit;

/// <summary>
/// A service that is so slow that the time allowed for each request has run out by the time it is looked at: the shortest time is allowed, and whoever counts
/// it waits until it is over.
/// </summary>
internal static class OutOfTime
{
    public static void LetTimeRunOut(this IServiceCollection services)
    {
        services.AddSingleton<IStartupFilter, Waiting>();
        services.PostConfigure<RequestTimeoutOptions>(o =>
            o.DefaultPolicy = new RequestTimeoutPolicy { Timeout = TimeSpan.FromMilliseconds(1), WriteTimeoutResponse = o.DefaultPolicy!.WriteTimeoutResponse });
    }

    private sealed class Waiting : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use((http, following) =>
            {
                http.Features.Set<IHttpRequestLifetimeFeature>(new Lifetime(http.Features.GetRequiredFeature<IHttpRequestLifetimeFeature>()));
                return following(http);
            });
            next(app);
        };
    }

    // What counts the time puts a token in the place of the one that is there, and the old one back in the end.
    private sealed class Lifetime(IHttpRequestLifetimeFeature real) : IHttpRequestLifetimeFeature
    {
        private readonly CancellationToken _own = real.RequestAborted;

        public CancellationToken RequestAborted
        {
            get => real.RequestAborted;
            set
            {
                real.RequestAborted = value;
                if (value != _own)
                    value.WaitHandle.WaitOne();
            }
        }

        public void Abort() => real.Abort();
    }
}
