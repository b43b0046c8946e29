using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>Counted units that a person accepted into the priors of a family. Never edited: the next update has the next number.</summary>
/// <param name="Family">Id of the family.</param>
/// <param name="Number">1, 2, 3 …</param>
/// <param name="Units">How many closed units with confirmed causes were counted.</param>
/// <param name="Confirmed">Cause to in how many of them it was confirmed; causes without any are left out.</param>
/// <param name="Reason">Why it is accepted, in the person's own words.</param>
/// <param name="Person">Who accepts it.</param>
/// <param name="Time">When, UTC.</param>
public sealed record PriorUpdate(
    string Family, int Number, int Units, ImmutableSortedDictionary<string, int> Confirmed, string Reason, string Person, DateTimeOffset Time) : IShopRecord<PriorUpdate>
{
    /// <inheritdoc/>
    public static ShopTable<PriorUpdate> Table { get; } = new("prior", isEdited: false, StoreJson.Default.PriorUpdate, isOfUnit: false);

    /// <inheritdoc/>
    public string Id => FormattableString.Invariant($"{Family}:{Number}");

    string? IShopRecord<PriorUpdate>.OfUnit => null;

    string IShopRecord<PriorUpdate>.About => Family;

    long IShopRecord<PriorUpdate>.Version => 1;

    PriorUpdate IShopRecord<PriorUpdate>.At(long version) => this;
}
