namespace RebuildApi.Server.Errors;

/// <summary>Turns whatever is thrown, and every empty error that the framework sets, into problem details.</summary>
public sealed partial class ProblemMiddleware(RequestDelegate next, ILogger<ProblemMiddleware> log)
{
    /// <summary>Runs the rest of the pipeline.</summary>
    public async Task InvokeAsync(HttpContext http)
    {
        try
        {
            await next(http);
            if (IsEmptyError(http.Response))
                await ProblemWriter.Write(http, Framework(http));
        }
        catch (OperationCanceledException) when (http.RequestAborted.IsCancellationRequested && http.Response.HasStarted)
        {
            // Nobody is listening any more.
        }
        catch (Exception exception) when (!http.Response.HasStarted)
        {
            var problem = ExceptionMapper.ToProblem(exception);
            if (problem.Problem == Problems.Unexpected)
                LogFault(log, exception, http.Request.Method, http.Request.Path);
            http.Response.Clear();
            SecurityHeaders.Set(http);
            await ProblemWriter.Write(http, problem);
        }
    }

    private static bool IsEmptyError(HttpResponse response) =>
        response is { HasStarted: false, StatusCode: >= 400, ContentType: null, ContentLength: null or 0 };

    private static ProblemException Framework(HttpContext http)
    {
        var problem = Problems.ForStatus(http.Response.StatusCode);
        var detail = problem == Problems.MethodNotAllowed
            ? $"{http.Request.Method} is not taken here; allowed: {http.Response.Headers.Allow}."
            : problem.Title + ".";
        return new ProblemException(problem, detail);
    }

    [LoggerMessage(LogLevel.Error, "Unexpected fault in {Method} {Path}")]
    private static partial void LogFault(ILogger log, Exception exception, string method, PathString path);
}
