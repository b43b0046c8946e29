using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>A test that was tried on a unit. Of several results of one test the newest counts.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Seen">What was tried, by whom, when, and whether it showed.</param>
public sealed record TestDone(string Unit, TestSeen Seen) : IShopRecord<TestDone>
{
    /// <inheritdoc/>
    public static ShopTable<TestDone> Table { get; } = new("test", isEdited: false, StoreJson.Default.TestDone);

    /// <inheritdoc/>
    public string Id => Seen.Id;

    string IShopRecord<TestDone>.OfUnit => Unit;

    string IShopRecord<TestDone>.About => Seen.Test;

    long IShopRecord<TestDone>.Version => 1;

    TestDone IShopRecord<TestDone>.At(long version) => this;
}
