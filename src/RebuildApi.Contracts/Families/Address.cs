using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>Names one characteristic of the part in one position: <c>third-gear/dog.drive-flank-angle</c>.</summary>
/// <param name="Position">Id of the position; empty when the address is one of a kind.</param>
/// <param name="Characteristic">Id of the characteristic.</param>
public sealed record Address(string Position, string Characteristic)
{
    /// <summary>Reads <c>position/characteristic</c>.</summary>
    /// <returns>The address, or null when the text is not of that shape.</returns>
    public static Address? TryParse(string text)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        return slash <= 0 || slash == text.Length - 1 ? null : new Address(text[..slash], text[(slash + 1)..]);
    }

    /// <summary>Whether it names a characteristic of a kind, wherever the part sits.</summary>
    [JsonIgnore]
    public bool IsOfKind => Position.Length == 0;

    /// <inheritdoc/>
    public override string ToString() => IsOfKind ? Characteristic : Position + "/" + Characteristic;
}
