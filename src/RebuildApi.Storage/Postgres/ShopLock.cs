using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace RebuildApi.Storage.Postgres;

/// <summary>
/// Numbers and names by which the copies of the service find each other in one database. Each is made from the schema and the shop; should two shops ever
/// share a number, they only wait for each other now and then.
/// </summary>
internal sealed record ShopLock(string Schema, string Shop)
{
    /// <summary>Key of the lock that whoever writes the shop holds.</summary>
    public long Writing => Number("writing");

    /// <summary>Channel on which it is told what was committed; its name must fit into 63 bytes.</summary>
    public string Channel => "rebuild_" + Convert.ToHexStringLower(Hash("events"))[..32];

    /// <summary>Key of the lock of whoever brings the schema up to date.</summary>
    public static long Upgrading(string schema) => new ShopLock(schema, "").Number("upgrading");

    /// <summary>Key of the lock of whoever has a duty.</summary>
    public long Duty(string duty) => Number("duty:" + duty);

    private long Number(string what) => BinaryPrimitives.ReadInt64BigEndian(Hash(what));

    private byte[] Hash(string what) => SHA256.HashData(Encoding.UTF8.GetBytes($"{Schema.Length}:{Schema}{Shop.Length}:{Shop}{what}"));
}
