using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>What the shop opens to another one that shares its database: to read, never to write. A later one replaces it.</summary>
/// <param name="Shop">To which shop.</param>
/// <param name="Opens">What; nothing once it was taken back.</param>
/// <param name="Person">Who decided so.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Version">Row version.</param>
public sealed record Sharing(string Shop, ImmutableArray<Opening> Opens, string Person, DateTimeOffset Time, long Version) : IShopRecord<Sharing>
{
    /// <inheritdoc/>
    public static ShopTable<Sharing> Table { get; } = new("sharing", isEdited: true, StoreJson.Default.Sharing, isOfUnit: false);

    string IShopRecord<Sharing>.Id => Shop;

    string? IShopRecord<Sharing>.OfUnit => null;

    // What the row says is what counts, in both engines: one look at it, without reading the entry.
    string? IShopRecord<Sharing>.About => Opens.IsEmpty ? null : Said(Opens);

    /// <inheritdoc/>
    public Sharing At(long version) => this with { Version = version };

    /// <summary>What is opened, as the row says it.</summary>
    internal static string Said(ImmutableArray<Opening> opens) => string.Join(' ', opens.Distinct().Order().Select(Word));

    /// <summary>What a row says is opened.</summary>
    internal static ImmutableArray<Opening> Read(string? said) =>
        [.. Enum.GetValues<Opening>().Where(o => said?.Split(' ').Contains(Word(o)) == true)];

    private static string Word(Opening opening) => opening.ToString().ToLowerInvariant();
}
