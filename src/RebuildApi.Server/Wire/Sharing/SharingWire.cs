using System.Collections.Immutable;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Sharing;

/// <summary>What the shop opens to another one, to read.</summary>
/// <param name="Shop">To which shop.</param>
/// <param name="Opens">What; nothing once it was taken back.</param>
/// <param name="Person">Who decided so.</param>
/// <param name="Time">When, UTC.</param>
public sealed record SharingWire(string Shop, ImmutableArray<Opening> Opens, string Person, DateTimeOffset Time)
{
    /// <summary>From the store.</summary>
    public static SharingWire From(Storage.Sharing s) => new(s.Shop, s.Opens, s.Person, s.Time);
}

/// <summary>What is to be opened to another shop.</summary>
/// <param name="Shop">To which shop: its <c>Rebuild:Shop</c>.</param>
/// <param name="Opens">What.</param>
/// <param name="Person">Who decides so.</param>
public sealed record SharingRequest([Id] string Shop, [Entries(1, 2)] ImmutableArray<Opening> Opens, [Words(100)] string Person);

/// <summary>That what was opened to another shop is taken back.</summary>
/// <param name="Person">Who decides so.</param>
public sealed record SharingEndRequest([Words(100)] string Person);
