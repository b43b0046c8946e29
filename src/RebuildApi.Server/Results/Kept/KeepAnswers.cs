
namespace RebuildApi.Server.Results;

/// <summary>
/// Gives the last answer of an address again while nothing has changed. Which moment it belongs to is read before it is worked out: a change in between
/// makes it old at once, never new.
/// </summary>
public sealed class KeepAnswers(AnswerShelf shelf) : IEndpointFilter
{
    /// <inheritdoc/>
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var http = context.HttpContext;
        var address = $"{http.Request.Scheme}://{http.Request.Host}{http.Request.Path}{http.Request.QueryString}";
        var now = await shelf.Now(http.RequestAborted);
        if (shelf.Find(address, now) is { } kept)
            return new Again(kept);
        return await next(context) switch
        {
            ISteady { Etag: { } etag } answer => new Recorded(answer, body => shelf.Keep(address, body), now, etag),
            var other => other,
        };
    }

    private sealed class Again(KeptAnswer kept) : IResult
    {
        public async Task ExecuteAsync(HttpContext httpContext)
        {
            if (Conditional.Matches(httpContext, kept.Etag))
                return;
            var response = httpContext.Response;
            if (kept.Link is { } link)
                response.Headers.Link = link;
            response.ContentType = kept.ContentType;
            response.ContentLength = kept.Body.Length;
            await response.Body.WriteAsync(kept.Body, httpContext.RequestAborted);
        }
    }

    private sealed class Recorded(ISteady answer, Action<KeptAnswer> keep, Moment from, string etag) : IResult
    {
        public async Task ExecuteAsync(HttpContext httpContext)
        {
            var response = httpContext.Response;
            var (wire, heard) = (response.Body, new MemoryStream());
            response.Body = heard;
            try
            {
                await answer.ExecuteAsync(httpContext);
            }
            finally
            {
                response.Body = wire;
            }

            var body = heard.GetBuffer().AsMemory(0, (int)heard.Length);
            if (response.StatusCode == StatusCodes.Status200OK)
                keep(new KeptAnswer(from, etag, response.Headers.Link.ToString() is { Length: > 0 } link ? link : null, response.ContentType!, body));
            await wire.WriteAsync(body, httpContext.RequestAborted);
        }
    }
}

/// <summary>An answer that depends on nothing but records, rules and the address.</summary>
public interface ISteady : IResult
{
    /// <summary>Its entity tag; null when it depends on more.</summary>
    string? Etag { get; }
}
