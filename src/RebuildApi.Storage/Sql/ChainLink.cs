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
    string Hash,
    long Form = ChainLink.Old)
{
    /// <summary>Texts that name a customer stand in the body.</summary>
    public const long Old = 1;

    /// <summary>They stand apart, and the form is hashed too.</summary>
    public const long Apart = 2;

    /// <summary>
    /// SHA-256 over every field, each behind its length in bytes (8 bytes, big-endian): no two different entries give the same bytes, however
    /// their texts are cut. Lower-case hex.
    /// </summary>
    public string Computed()
    {
        var fields = Fields();
        var bytes = new byte[fields.Sum(f => sizeof(long) + Encoding.UTF8.GetByteCount(f))];
        var at = 0;
        foreach (var field in fields)
        {
            var length = Encoding.UTF8.GetBytes(field, bytes.AsSpan(at + sizeof(long)));
            BinaryPrimitives.WriteInt64BigEndian(bytes.AsSpan(at), length);
            at += sizeof(long) + length;
        }

        return Convert.ToHexStringLower(SHA256.HashData(bytes));
    }

    /// <summary>The same entry with its hash.</summary>
    public ChainLink Sealed() => this with { Hash = Computed() };

    private string[] Fields()
    {
        string[] fields = [Shop, Sequence.ToString(CultureInfo.InvariantCulture), At, Actor, Operation, Kind, Unit, Id, Body, Previous];
        return Form == Old ? fields : [.. fields, Form.ToString(CultureInfo.InvariantCulture)];
    }
}
