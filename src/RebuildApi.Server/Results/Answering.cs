namespace RebuildApi.Server.Results;

/// <summary>The moment before the first byte of an answer.</summary>
public static class Answering
{
    /// <summary>Ends here when the time of the request is over, so that this is answered; later it would stand behind what was begun, or cut that off.</summary>
    /// <exception cref="OperationCanceledException">It is over, or the client has left.</exception>
    public static void Begin(this HttpContext http) => http.RequestAborted.ThrowIfCancellationRequested();
}
