namespace RebuildApi.Server.Results;

/// <summary>Answers 304 when the client has the present version already (RFC 9110, 13.1.2).</summary>
public static class Conditional
{
    /// <summary>Sets the entity tag; true when the answer is finished with 304.</summary>
    public static bool Matches(HttpContext http, string? etag)
    {
        if (etag is null)
            return false;
        http.Response.Headers.ETag = etag;
        http.Response.Headers.CacheControl = "no-cache";
        var known = http.Request.Headers.IfNoneMatch.ToString();
        if (known.Length == 0 || !known.Split(',').Any(k => Same(k.Trim(), etag)))
            return false;
        http.Response.StatusCode = StatusCodes.Status304NotModified;
        return true;
    }

    private static bool Same(string known, string etag) => known == "*" || Strong(known) == Strong(etag);

    private static string Strong(string tag) => tag.StartsWith("W/", StringComparison.Ordinal) ? tag[2..] : tag;
}
