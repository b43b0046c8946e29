using System.Diagnostics;
using System.Text.Json;
using RebuildApi.Server.Json;

namespace RebuildApi.Server.Errors;

/// <summary>Writes a problem as the answer.</summary>
public static class ProblemWriter
{
    /// <summary>The media type of problem details.</summary>
    public const string MediaType = "application/problem+json";

    /// <summary>Writes the problem; the response must not have begun.</summary>
    public static async Task Write(HttpContext http, ProblemException problem)
    {
        var response = http.Response;
        response.StatusCode = problem.Problem.Status;
        response.ContentType = MediaType + "; charset=utf-8";
        response.Headers.CacheControl = "no-store";
        foreach (var (name, value) in problem.Headers)
            response.Headers[name] = value;
        var body = JsonSerializer.SerializeToUtf8Bytes(Document(http, problem), WireJson.Options);
        response.ContentLength = body.Length;
        // The time of the request may be over already: a write that were cut off by that would be answered once more, behind the first.
        if (!HttpMethods.IsHead(http.Request.Method))
            await response.Body.WriteAsync(body, CancellationToken.None);
    }

    private static ProblemDocument Document(HttpContext http, ProblemException problem) => new(
        "/problems/" + problem.Problem.Code,
        problem.Problem.Title,
        problem.Problem.Status,
        problem.Message,
        http.Request.Path.ToUriComponent(),
        problem.Problem.Code,
        problem.Problem.Fix,
        problem.Errors,
        Activity.Current?.TraceId.ToHexString() ?? http.TraceIdentifier)
    {
        Extras = problem.Extras.Count == 0 ? null : problem.Extras.ToDictionary(),
    };
}
