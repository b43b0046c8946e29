using System.Collections.Immutable;
using Microsoft.AspNetCore.Routing;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Access;

/// <summary>Holds who asks against what the address asks for: 401 without a token that counts (RFC 6750, 3), 403 when its scope is too small.</summary>
public sealed class ScopeGuard(RequestDelegate next, WrongTokens wrong)
{
    private const string Challenge = "Bearer realm=\"rebuild\"";

    /// <summary>Runs the rest of the pipeline for who is admitted.</summary>
    public Task InvokeAsync(HttpContext http)
    {
        // What is no route, such as the framework's own answers 404 and 405, reveals nothing.
        if (http.GetEndpoint() is not RouteEndpoint endpoint || Admits.Of(endpoint).Least is not { } needed)
            return next(http);
        var admission = http.Features.Get<Admission>()!;
        if (admission.Caller is not { } caller)
            return admission.Unavailable is null && endpoint.Metadata.GetMetadata<IsPage>() is not null ? SignIn(http) : Refuse(http, admission);
        return caller.Scope >= needed ? next(http) : throw TooSmall(caller, needed);
    }

    /// <summary>The problem of a token that is missing or does not count.</summary>
    public static async ValueTask<ProblemException> Refused(HttpContext http, Admission admission, WrongTokens wrong)
    {
        if (admission.Unavailable is { } unavailable)
            return ExceptionMapper.ToProblem(unavailable);
        if (admission.Fault is not { } fault)
            return new ProblemException(Problems.TokenRequired, "No token came with the request.") { Headers = Says(Challenge) };
        if (admission.IsUnknown)
            await wrong.Count(http);
        return new ProblemException(Problems.TokenRefused, fault) { Headers = Says(Challenge + ", error=\"invalid_token\"") };
    }

    private async Task Refuse(HttpContext http, Admission admission) => throw await Refused(http, admission, wrong);

    private static ProblemException TooSmall(Caller caller, Scope needed) =>
        new(Problems.ScopeMissing, $"This needs a token of scope {needed.Word()}; {caller.Name} has {caller.Scope.Word()}.")
        {
            Headers = Says($"{Challenge}, error=\"insufficient_scope\", scope=\"{needed.Word()}\""),
            Extras = ImmutableSortedDictionary<string, object>.Empty.Add("scopeNeeded", needed.Word()).Add("scopeHad", caller.Scope.Word()),
        };

    private static Task SignIn(HttpContext http)
    {
        http.Response.Headers.CacheControl = "no-store";
        http.Response.Redirect("/sign-in?next=" + Uri.EscapeDataString(http.Request.Path + http.Request.QueryString));
        return Task.CompletedTask;
    }

    private static ImmutableSortedDictionary<string, string> Says(string challenge) =>
        ImmutableSortedDictionary<string, string>.Empty.Add("WWW-Authenticate", challenge);
}
