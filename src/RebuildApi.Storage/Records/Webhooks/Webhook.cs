using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>A receiver that is told of what happens.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Address">Where it is told.</param>
/// <param name="Kinds">The kinds of events that it is told of; empty for all.</param>
/// <param name="Person">Who set it up.</param>
/// <param name="Made">When, UTC.</param>
/// <param name="Paused">Whether nothing is sent for now; what happens meanwhile waits.</param>
/// <param name="Ended">Whether it was taken away.</param>
/// <param name="Version">Row version.</param>
public sealed record Webhook(
    string Id, string Name, string Address, ImmutableArray<string> Kinds, string Person, DateTimeOffset Made, bool Paused, bool Ended, long Version) : IShopRecord<Webhook>
{
    /// <inheritdoc/>
    public static ShopTable<Webhook> Table { get; } = new("webhook", isEdited: true, StoreJson.Default.Webhook, isOfUnit: false);

    string? IShopRecord<Webhook>.OfUnit => null;

    // Those that stand are looked for; those that were taken away are not.
    string? IShopRecord<Webhook>.About => Ended ? "ended" : Standing;

    /// <summary>What receivers that were not taken away are found by.</summary>
    public static string Standing => "standing";

    /// <summary>Whether it is told of a kind of event.</summary>
    public bool Wants(string kind) => Kinds.IsEmpty || Kinds.Contains(kind);

    /// <inheritdoc/>
    public Webhook At(long version) => this with { Version = version };
}
