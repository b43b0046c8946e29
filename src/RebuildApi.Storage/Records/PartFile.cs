using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>One part over all units of the shop.</summary>
/// <param name="Revisions">Its revisions, oldest first.</param>
/// <param name="Places">Where it has been, oldest first.</param>
/// <param name="Removals">When it was taken out of units, oldest first.</param>
public sealed record PartFile(ImmutableArray<PartRevision> Revisions, ImmutableArray<PartPlace> Places, ImmutableArray<PartRemoval> Removals);

/// <summary>One revision of a part.</summary>
/// <param name="Component">What it is.</param>
/// <param name="Unit">The unit that it was recorded in.</param>
/// <param name="Time">When, UTC.</param>
public sealed record PartRevision(Component Component, string Unit, DateTimeOffset Time);

/// <summary>That a part was found, chosen or fitted somewhere.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Placement">Where in it.</param>
/// <param name="Since">From when on, UTC.</param>
/// <param name="Until">Until when, UTC; none while it stands.</param>
public sealed record PartPlace(string Unit, Placement Placement, DateTimeOffset Since, DateTimeOffset? Until);

/// <summary>That a part was taken out of a unit for good. Never edited.</summary>
/// <param name="Id">Its id; sorts by time.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Component">The part.</param>
/// <param name="Places">Where it was: <c>third-gear/1/found</c>.</param>
/// <param name="To">Where it went: <c>shelf</c>, <c>other-unit</c>, <c>owner</c> or <c>scrap</c>.</param>
/// <param name="Reason">Why, in the person's own words.</param>
/// <param name="Person">Who.</param>
/// <param name="Time">When, UTC.</param>
public sealed record PartRemoval(
    string Id, string Unit, string Component, ImmutableArray<string> Places, string To, string Reason, string Person, DateTimeOffset Time) : IShopRecord<PartRemoval>
{
    /// <inheritdoc/>
    public static ShopTable<PartRemoval> Table { get; } = new("removal", isEdited: false, StoreJson.Default.PartRemoval);

    string IShopRecord<PartRemoval>.OfUnit => Unit;

    string IShopRecord<PartRemoval>.About => Component;

    long IShopRecord<PartRemoval>.Version => 1;

    PartRemoval IShopRecord<PartRemoval>.At(long version) => this;
}
