namespace RebuildApi.Storage;

/// <summary>A line for the invoicing tool. Never edited: a wrong one is voided by a line that takes it off, and written anew.</summary>
/// <param name="Id">Its id; sorts by time. The same line always has the same, so that a tool that reads twice bills once.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Quote">The quote that was agreed to.</param>
/// <param name="Of">The line of the quote; none for what was added since.</param>
/// <param name="What">What it is for, with its price and tax.</param>
/// <param name="Net">Without tax, in whole minor units.</param>
/// <param name="TaxAmount">Its tax.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="Digits">Decimals of its minor unit.</param>
/// <param name="Voids">The line that it takes off, if it is a void.</param>
/// <param name="Person">Who wrote it.</param>
/// <param name="Time">When, UTC.</param>
public sealed record InvoiceLine(
    string Id,
    string Unit,
    string Quote,
    string? Of,
    Needed What,
    long Net,
    long TaxAmount,
    string Currency,
    int Digits,
    string? Voids,
    string Person,
    DateTimeOffset Time) : IShopRecord<InvoiceLine>
{
    /// <inheritdoc/>
    public static ShopTable<InvoiceLine> Table { get; } = new("invoice-line", isEdited: false, StoreJson.Default.InvoiceLine);

    string IShopRecord<InvoiceLine>.OfUnit => Unit;

    string IShopRecord<InvoiceLine>.About => Quote;

    long IShopRecord<InvoiceLine>.Version => 1;

    InvoiceLine IShopRecord<InvoiceLine>.At(long version) => this;
}
