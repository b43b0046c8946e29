using Microsoft.AspNetCore.Http.Features;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>Reads a whole request body, up to what its address takes.</summary>
public static class RequestBytes
{
    /// <summary>The largest body where nothing else is said: 1 MiB.</summary>
    public const int UsualLimit = 1 << 20;

    /// <summary>Reads the body.</summary>
    /// <exception cref="ProblemException">It is larger than allowed.</exception>
    public static ValueTask<ReadOnlyMemory<byte>> Read(HttpContext http) => Read(http, http.GetEndpoint()?.Metadata.GetMetadata<BodyLimit>()?.Bytes ?? UsualLimit);

    /// <summary>Reads the body up to a limit.</summary>
    /// <exception cref="ProblemException">It is larger.</exception>
    public static async ValueTask<ReadOnlyMemory<byte>> Read(HttpContext http, int limit)
    {
        if (http.Request.ContentLength > limit)
            throw TooLarge(limit);
        if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } feature)
            feature.MaxRequestBodySize = limit + 1;
        using var buffer = new MemoryStream();
        var chunk = new byte[16384];
        int read;
        while ((read = await http.Request.Body.ReadAsync(chunk, http.RequestAborted)) > 0)
        {
            await buffer.WriteAsync(chunk.AsMemory(0, read), http.RequestAborted);
            if (buffer.Length > limit)
                throw TooLarge(limit);
        }

        return buffer.ToArray();
    }

    private static ProblemException TooLarge(int limit) => new(Problems.BodyTooLarge, $"At most {limit} bytes are taken here.");
}

/// <summary>How large a body an address takes.</summary>
/// <param name="Bytes">Bytes.</param>
public sealed record BodyLimit(int Bytes);
