using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>A quote. Never edited: the next one has the next number.</summary>
/// <param name="Id">Its id; sorts by time.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Number">1, 2, 3 … within its unit.</param>
/// <param name="Plan">The plan that it prices, if one.</param>
/// <param name="Rates">The rates as they stood.</param>
/// <param name="Lines">The lines.</param>
/// <param name="Person">Who made it.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Expires">Until when its prices hold, UTC.</param>
public sealed record Quote(
    string Id,
    string Unit,
    int Number,
    string? Plan,
    Rates Rates,
    ImmutableArray<Needed> Lines,
    string Person,
    DateTimeOffset Time,
    DateTimeOffset Expires) : IShopRecord<Quote>
{
    /// <inheritdoc/>
    public static ShopTable<Quote> Table { get; } = new("quote", isEdited: false, StoreJson.Default.Quote);

    string IShopRecord<Quote>.OfUnit => Unit;

    string? IShopRecord<Quote>.About => Plan;

    long IShopRecord<Quote>.Version => 1;

    Quote IShopRecord<Quote>.At(long version) => this;
}

/// <summary>That a customer agreed to a quote, or to some of its lines.</summary>
/// <param name="Id">Its id; sorts by time.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Quote">The quote.</param>
/// <param name="Number">Its number.</param>
/// <param name="By">Who agreed, and how, in words.</param>
/// <param name="Person">Who of the shop took it down.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Lines">The lines agreed to, with their amounts.</param>
/// <param name="Sum">What they come to with tax, in whole minor units.</param>
/// <param name="Share">By which share the work may grow without asking again.</param>
public sealed record Approval(
    string Id,
    string Unit,
    string Quote,
    int Number,
    string By,
    string Person,
    DateTimeOffset Time,
    ImmutableArray<ApprovedLine> Lines,
    long Sum,
    decimal Share) : IShopRecord<Approval>
{
    /// <inheritdoc/>
    public static ShopTable<Approval> Table { get; } = new("approval", isEdited: false, StoreJson.Default.Approval);

    string IShopRecord<Approval>.OfUnit => Unit;

    string IShopRecord<Approval>.About => Quote;

    long IShopRecord<Approval>.Version => 1;

    Approval IShopRecord<Approval>.At(long version) => this;
}

/// <summary>A line that was agreed to.</summary>
/// <param name="Line">The line of the quote.</param>
/// <param name="Net">Without tax, in whole minor units.</param>
/// <param name="Tax">Tax.</param>
public sealed record ApprovedLine(string Line, long Net, long Tax);
