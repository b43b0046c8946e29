using Microsoft.AspNetCore.Routing.Patterns;

namespace RebuildApi.Server.Requests;

/// <summary>
/// Routes whose handlers are made ready at their first request. Making one ready compiles code; doing so for each of some three hundred before the first
/// request was answered took most of the time that the service needed to start.
/// </summary>
public static class LaterRoutes
{
    /// <summary>Maps a handler as <c>MapMethods</c> does, with the same description.</summary>
    /// <param name="routes">Where.</param>
    /// <param name="verb">The method of requests.</param>
    /// <param name="pattern">The address.</param>
    /// <param name="handler">What answers.</param>
    public static RouteHandlerBuilder MapLater(this IEndpointRouteBuilder routes, string verb, string pattern, Delegate handler)
    {
        var route = new RouteHandlerBuilder([routes.MapMethods(pattern, [verb], Unready)]);
        route.Add(endpoint => Describe(endpoint, handler));
        route.Finally(endpoint => endpoint.RequestDelegate = Later((RouteEndpointBuilder)endpoint, handler));
        return route;
    }

    /// <summary>What the framework sees in a handler: what it takes and gives, then its own attributes.</summary>
    private static void Describe(EndpointBuilder endpoint, Delegate handler)
    {
        endpoint.Metadata.Add(handler.Method);
        RequestDelegateFactory.InferMetadata(handler.Method, Options((RouteEndpointBuilder)endpoint));
        foreach (var attribute in handler.Method.GetCustomAttributes(inherit: true))
            endpoint.Metadata.Add(attribute);
    }

    // The filters go with the handler, since the framework would else put them around the delegate that makes it ready.
    private static RequestDelegate Later(RouteEndpointBuilder endpoint, Delegate handler)
    {
        var inner = new RouteEndpointBuilder(null, endpoint.RoutePattern, endpoint.Order) { ApplicationServices = endpoint.ApplicationServices };
        foreach (var metadata in endpoint.Metadata)
            inner.Metadata.Add(metadata);
        foreach (var filter in endpoint.FilterFactories)
            inner.FilterFactories.Add(filter);
        endpoint.FilterFactories.Clear();
        var ready = new Lazy<RequestDelegate>(() => RequestDelegateFactory.Create(handler, Options(inner)).RequestDelegate);
        return http => ready.Value(http);
    }

    private static RequestDelegateFactoryOptions Options(RouteEndpointBuilder endpoint) => new()
    {
        ServiceProvider = endpoint.ApplicationServices,
        RouteParameterNames = endpoint.RoutePattern.Parameters.Select(p => p.Name),
        EndpointBuilder = endpoint,
    };

    private static Task Unready(HttpContext http) => throw new InvalidOperationException("The route has not been made ready.");
}
