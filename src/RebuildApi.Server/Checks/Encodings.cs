using System.IO.Compression;
using Microsoft.Net.Http.Headers;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Checks;

/// <summary>Bodies that come and go compressed, for streams that must not be held in memory (RFC 9110, 8.4).</summary>
public static class Encodings
{
    /// <summary>The body as it was before it was compressed.</summary>
    /// <exception cref="ProblemException">Compressed in a way that is not taken.</exception>
    public static Stream Plain(HttpRequest request) => request.Headers.ContentEncoding.ToString().ToLowerInvariant() switch
    {
        "" or "identity" => request.Body,
        "gzip" => new GZipStream(request.Body, CompressionMode.Decompress),
        "br" => new BrotliStream(request.Body, CompressionMode.Decompress),
        var other => throw new ProblemException(Problems.UnsupportedMediaType, $"Content-Encoding is {other}; taken here: gzip, br.",
            [new FieldError("header/Content-Encoding", FieldProblems.NotAllowed.Code, "This content encoding is not taken here.", other, ["gzip", "br"])]),
    };

    /// <summary>The answer, compressed when the client asks for it; brotli before gzip when it takes both alike.</summary>
    /// <param name="http">The request, and the head of the answer.</param>
    /// <param name="answer">Where the answer goes. It stays open.</param>
    public static Stream Compressed(HttpContext http, Stream answer)
    {
        var best = StringWithQualityHeaderValue.TryParseList(http.Request.Headers.AcceptEncoding, out var asked)
            ? asked.Where(a => a.Value.Value is "br" or "gzip" && a.Quality is not 0).OrderByDescending(a => a.Quality ?? 1).ThenBy(a => a.Value.Value, StringComparer.Ordinal).FirstOrDefault()
            : null;
        http.Response.Headers.Vary = "Accept-Encoding";
        if (best is null)
            return answer;
        http.Response.Headers.ContentEncoding = best.Value.Value;
        return best.Value.Value == "br"
            ? new BrotliStream(answer, CompressionLevel.Fastest, leaveOpen: true)
            : new GZipStream(answer, CompressionLevel.Fastest, leaveOpen: true);
    }
}
