using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>An HTTP answer as bytes, kept with the idempotency key in the transaction of its effect.</summary>
/// <param name="Status">Status code.</param>
/// <param name="ContentType">Content type; empty without a body.</param>
/// <param name="Body">Body.</param>
/// <param name="Headers">Headers such as ETag and Location.</param>
/// <param name="Replayed">Whether it was stored by an earlier request with the same key.</param>
public sealed record StoredAnswer(
    int Status,
    string ContentType,
    ReadOnlyMemory<byte> Body,
    ImmutableSortedDictionary<string, string> Headers,
    bool Replayed = false)
{
    /// <summary>204, for changes that nobody over HTTP asked for.</summary>
    public static StoredAnswer Nothing { get; } = new(204, "", ReadOnlyMemory<byte>.Empty, ImmutableSortedDictionary<string, string>.Empty);

    /// <summary>What is kept with the key in the place of the body; null for the body itself. For an answer that holds a secret.</summary>
    public ReadOnlyMemory<byte>? Kept { get; init; }
}
