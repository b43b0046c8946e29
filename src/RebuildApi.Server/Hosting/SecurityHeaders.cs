namespace RebuildApi.Server;

/// <summary>Headers that keep browsers from guessing, framing or loading anything from elsewhere.</summary>
public static class SecurityHeaders
{
    /// <summary>Sets the headers of every answer.</summary>
    public static void Set(HttpContext http)
    {
        var headers = http.Response.Headers;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers.ContentSecurityPolicy = http.Request.Path.StartsWithSegments("/docs") ? ReferencePage : Everything;
    }

    private const string Everything = "default-src 'none'; style-src 'self' 'unsafe-inline'; img-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'";

    // The reference page carries its own script and pictures, all from here.
    private const string ReferencePage =
        "default-src 'self'; script-src 'self' 'unsafe-inline'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; base-uri 'none'; frame-ancestors 'none'";
}
