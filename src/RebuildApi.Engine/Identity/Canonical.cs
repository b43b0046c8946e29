using System.Buffers;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Identity;

/// <summary>Canonical JSON (RFC 8785) of contract records and its SHA-256: the only meaning of "the same family" or "the same inputs".</summary>
public static class Canonical
{
    /// <summary>Hash of a family's declaration, lower-case hex.</summary>
    public static string Sha256(Family family) => Sha256(family, ContractJson.Default.Family);

    /// <summary>Hash of a snapshot, lower-case hex.</summary>
    public static string Sha256(UnitSnapshot snapshot) => Sha256(snapshot, ContractJson.Default.UnitSnapshot);

    /// <summary>Hash of any record with known JSON shape, lower-case hex.</summary>
    public static string Sha256<T>(T value, JsonTypeInfo<T> shape)
    {
        using var document = JsonSerializer.SerializeToDocument(value, shape);
        return Sha256(document.RootElement);
    }

    /// <summary>Hash of a JSON value, lower-case hex.</summary>
    public static string Sha256(JsonElement element) => Convert.ToHexStringLower(SHA256.HashData(Bytes(element).WrittenSpan));

    /// <summary>Canonical text of a JSON value.</summary>
    public static string Text(JsonElement element) => Encoding.UTF8.GetString(Bytes(element).WrittenSpan);

    private static ArrayBufferWriter<byte> Bytes(JsonElement element)
    {
        var bytes = new ArrayBufferWriter<byte>(1 << 14);
        CanonicalWriter.Write(element, bytes);
        return bytes;
    }
}
