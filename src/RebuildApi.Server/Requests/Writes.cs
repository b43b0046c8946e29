using System.Security.Cryptography;
using System.Text;
using Microsoft.Net.Http.Headers;
using RebuildApi.Server.Access;
using RebuildApi.Server.Errors;
using RebuildApi.Storage;

namespace RebuildApi.Server.Requests;

/// <summary>Reads what every change says of itself: its key, whether it is a dry run, which version it changes.</summary>
public static class Writes
{
    private const string KeyHeader = "Idempotency-Key";

    /// <summary>Who asks for a change, for the store.</summary>
    public static WriteRequest RequestOf(HttpContext http, ReadOnlySpan<byte> body)
    {
        var operation = $"{http.Request.Method} {http.Request.Path}";
        return new WriteRequest(Caller.NameOf(http), operation, KeyOf(http), HashOf(operation, http.Request, body), IsDryRun(http));
    }

    /// <summary>Whether everything is to be undone at the end.</summary>
    public static bool IsDryRun(HttpContext http) =>
        QueryText.Flag(http, "dryRun") || http.Request.Headers["Prefer"].Any(p => p?.Split(',', ';').Any(x => x.Trim() == "dry-run") == true);

    /// <summary>The version that the client has seen; null when it says that any will do.</summary>
    /// <exception cref="ProblemException">If-Match is missing, or can't be a version of this thing.</exception>
    public static long? ExpectedVersion(HttpContext http, char prefix)
    {
        var sent = http.Request.Headers.IfMatch.ToString();
        if (sent.Length == 0)
            throw new ProblemException(Problems.PreconditionRequired, "If-Match is missing.");
        if (sent == "*")
            return null;
        return Etags.VersionOf(sent, prefix)
            ?? throw new ProblemException(Problems.VersionConflict, $"{sent} is not an ETag that this resource ever had.");
    }

    private static string? KeyOf(HttpContext http)
    {
        var values = http.Request.Headers[KeyHeader];
        if (values.Count == 0)
            return http.GetEndpoint()?.Metadata.GetMetadata<KeyRequired>() is null ? null : throw Missing();
        var key = values.ToString();
        if (values.Count == 1 && key.Length is > 0 and <= 200 && key.All(c => c is > ' ' and <= '~'))
            return key;
        throw new ProblemException(Problems.InvalidHeader, "The idempotency key can't be used.",
            [new FieldError("header/" + KeyHeader, FieldProblems.BadText.Code, "A key has 1 to 200 visible ASCII characters and is sent once.")]);
    }

    private static ProblemException Missing() => new(Problems.IdempotencyKeyMissing, "The header Idempotency-Key is missing.",
        [new FieldError("header/" + KeyHeader, FieldProblems.MissingField.Code, "A batch of readings needs a key.", null, null, "Send a value that is new for each batch, such as a random id.")]);

    // Length before content, so that no two different requests can run together into the same bytes.
    private static string HashOf(string operation, HttpRequest request, ReadOnlySpan<byte> body)
    {
        var head = $"{operation}\n{request.QueryString}\n{MediaTypeOf(request)}\n{request.Headers.IfMatch}\n{body.Length}\n";
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Encoding.UTF8.GetBytes(head));
        hash.AppendData(body);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    private static string MediaTypeOf(HttpRequest request) =>
        MediaTypeHeaderValue.TryParse(request.ContentType, out var type) ? type.MediaType.ToString() : "";
}

/// <summary>Says that an address needs an idempotency key.</summary>
public sealed record KeyRequired;
