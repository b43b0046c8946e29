using Microsoft.AspNetCore.Routing;

namespace RebuildApi.Server.Access;

/// <summary>Whom a route admits; each route carries one, and the last one said counts.</summary>
/// <param name="Least">The least scope that it asks for; null for everybody.</param>
/// <param name="Why">Why it is open to everybody.</param>
public sealed record Admits(Scope? Least, string? Why = null)
{
    /// <summary>What is asked where nothing was said: whatever it is, it opens to nobody by oversight.</summary>
    public static Admits Unsaid { get; } = new(Scope.Administrator);

    /// <summary>What a route asks where its table says nothing else: reading to read, anything else the bench.</summary>
    public static Admits ByVerb(string method) => new(HttpMethods.IsGet(method) ? Scope.Read : Scope.Bench);

    /// <summary>Whom an endpoint admits.</summary>
    public static Admits Of(Endpoint endpoint) => Of(endpoint.Metadata);

    /// <summary>Whom an endpoint with this metadata admits.</summary>
    public static Admits Of(IEnumerable<object> metadata) => metadata.OfType<Admits>().LastOrDefault() ?? Unsaid;
}

/// <summary>Says that a route is a page for people: who comes without a token is led to the sign-in page.</summary>
public sealed record IsPage;

/// <summary>How routes say whom they admit.</summary>
public static class Admitting
{
    /// <summary>Asks for this scope at least.</summary>
    public static RouteHandlerBuilder Needs(this RouteHandlerBuilder route, Scope least) => route.WithMetadata(new Admits(least));

    /// <summary>Opens a route to everybody, with the reason.</summary>
    public static RouteHandlerBuilder Open(this RouteHandlerBuilder route, string why) => route.WithMetadata(new Admits(null, why));

    /// <summary>Lets the verb decide for every route of a group that says nothing itself: the group speaks first, and the last one said counts.</summary>
    public static RouteGroupBuilder AdmitByVerb(this RouteGroupBuilder group)
    {
        ((IEndpointConventionBuilder)group).Add(b => b.Metadata.Add(Admits.ByVerb(b.Metadata.OfType<HttpMethodMetadata>().Single().HttpMethods[0])));
        return group;
    }
}
