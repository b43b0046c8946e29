using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace RebuildApi.Storage.Sql;

/// <summary>One entry of the hash chain as it is stored.</summary>
internal sealed record ChainLink(
    string Shop,
    long Sequence,
    string At,
    string Actor,
    string Operation,
    string Kind,
    string Unit,
    string Id,
    string Body,
    string Previous,
    string Hash)
{
    /// <summary>
    /// SHA-256 over every field, each behind its length in bytes (8 bytes, big-endian): no two different entries give the same bytes, however
    /// their texts are cut. Lower-case hex.
    /// </summary>
    public string Computed()
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Span<byte> length = stackalloc byte[sizeof(long)];
        foreach (var field in Fields())
        {
            var bytes = Encoding.UTF8.GetBytes(field);
            BinaryPrimitives.WriteInt64BigEndian(length, bytes.Length);
            hash.AppendData(length);
            hash.AppendData(bytes);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    /// <summary>The same entry with its hash.</summary>
    public ChainLink Sealed() => this with { Hash = Computed() };

    private string[] Fields() =>
        [Shop, Sequence.ToString(CultureInfo.InvariantCulture), At, Actor, Operation, Kind, Unit, Id, Body, Previous];
}
