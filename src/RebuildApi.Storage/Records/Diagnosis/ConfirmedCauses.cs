using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>What was found to lie behind a unit's complaint once it was known. Of several statements about one unit the newest counts.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Family">Id of its family.</param>
/// <param name="Causes">The causes that were there; every other cause of the family was not.</param>
/// <param name="Reason">How it is known, in the person's own words.</param>
/// <param name="Person">Who says so.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When, UTC.</param>
public sealed record ConfirmedCauses(
    string Id, string Unit, string Family, ImmutableArray<string> Causes, string Reason, string Person, string Bench, DateTimeOffset Time) : IShopRecord<ConfirmedCauses>
{
    /// <inheritdoc/>
    public static ShopTable<ConfirmedCauses> Table { get; } = new("confirmation", isEdited: false, StoreJson.Default.ConfirmedCauses);

    string IShopRecord<ConfirmedCauses>.OfUnit => Unit;

    string IShopRecord<ConfirmedCauses>.About => Family;

    long IShopRecord<ConfirmedCauses>.Version => 1;

    ConfirmedCauses IShopRecord<ConfirmedCauses>.At(long version) => this;
}
