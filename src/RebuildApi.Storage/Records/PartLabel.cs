namespace RebuildApi.Storage;

/// <summary>The short number that stands on a unit or a part. Given once, never to another.</summary>
/// <param name="Number">Running number of the shop.</param>
/// <param name="Code">What is printed: a letter for the sort, the number, the check letter.</param>
/// <param name="Unit">The unit, if it is one.</param>
/// <param name="Component">The part, if it is one.</param>
/// <param name="Time">When it was given, UTC.</param>
public sealed record PartLabel(long Number, string Code, string? Unit, string? Component, DateTimeOffset Time) : IShopRecord<PartLabel>
{
    /// <inheritdoc/>
    public static ShopTable<PartLabel> Table { get; } = new("label", isEdited: false, StoreJson.Default.PartLabel);

    string IShopRecord<PartLabel>.Id => Code;

    string? IShopRecord<PartLabel>.OfUnit => Unit;

    string? IShopRecord<PartLabel>.About => Component;

    long IShopRecord<PartLabel>.Version => 1;

    PartLabel IShopRecord<PartLabel>.At(long version) => this;
}
