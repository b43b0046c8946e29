using System.Collections.Immutable;
using RebuildApi.Engine.Money;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Shop;

/// <summary>One line of a quote.</summary>
/// <param name="Id">Its id within the quote.</param>
/// <param name="Sort">A part to order, one from the shelf, labour, machining, a core deposit, or something else.</param>
/// <param name="Text">What it is.</param>
/// <param name="Need">Whether the unit can go back without it.</param>
/// <param name="Chance">Chance that it will be needed at all; 1 when that is settled.</param>
/// <param name="Quantity">How much: pieces, or minutes.</param>
/// <param name="Measure">Of what.</param>
/// <param name="Price">Price without tax of so many units as per says; none while it is still to be asked for.</param>
/// <param name="Per">How many units the price is for.</param>
/// <param name="Net">Without tax, rounded on the line.</param>
/// <param name="Tax">Which tax.</param>
/// <param name="TaxAmount">Its tax.</param>
/// <param name="Positions">Where it goes.</param>
public sealed record QuoteLineWire(
    string Id,
    string Sort,
    string Text,
    string Need,
    decimal Chance,
    decimal Quantity,
    string Measure,
    MoneyWire? Price,
    decimal Per,
    MoneyWire? Net,
    TaxWire Tax,
    MoneyWire? TaxAmount,
    ImmutableArray<string> Positions) : IInWords
{
    /// <summary>From what is needed, with its amounts.</summary>
    public static QuoteLineWire From(Needed n, PricedLine? priced, Rates rates) => new(
        n.Id, n.Sort, n.Text, n.Need, n.Chance, n.Quantity, n.Measure, n.Price is { } price ? MoneyWire.Of(price, rates) : null, n.Per,
        priced is null ? null : MoneyWire.Of(priced.Net, rates), TaxWire.From(n.Tax), priced is null ? null : MoneyWire.Of(priced.Tax, rates), n.Positions);

    /// <inheritdoc/>
    public string InWords() => Text;
}

/// <summary>What lines come to.</summary>
/// <param name="Net">Without tax.</param>
/// <param name="Tax">Tax.</param>
/// <param name="Gross">With tax.</param>
/// <param name="ByTax">The same for each rate of tax.</param>
public sealed record TotalsWire(MoneyWire Net, MoneyWire Tax, MoneyWire Gross, ImmutableArray<TaxTotalWire> ByTax)
{
    /// <summary>From the engine.</summary>
    public static TotalsWire From(Totals t, Rates rates) => new(
        MoneyWire.Of(t.Net, rates), MoneyWire.Of(t.Tax, rates), MoneyWire.Of(t.Gross, rates),
        [.. t.ByRate.Select(r => new TaxTotalWire(r.Rate.Id, r.Rate.Percent, MoneyWire.Of(r.Net, rates), MoneyWire.Of(r.Tax, rates)))]);
}

/// <summary>What the lines of one rate of tax come to.</summary>
/// <param name="Id">The tax.</param>
/// <param name="Percent">Its rate.</param>
/// <param name="Net">Without tax.</param>
/// <param name="Tax">Tax.</param>
public sealed record TaxTotalWire(string Id, decimal Percent, MoneyWire Net, MoneyWire Tax);

/// <summary>Between what and what the price will lie, with tax.</summary>
/// <param name="Low">Only what is sure among the required lines.</param>
/// <param name="Likely">That, and each unsure line that is not optional by its chance.</param>
/// <param name="High">Every required and recommended line.</param>
public sealed record PriceRangeWire(MoneyWire Low, MoneyWire Likely, MoneyWire High);

/// <summary>A quote for a unit.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Number">1, 2, 3 … within its unit.</param>
/// <param name="Plan">The plan that it prices.</param>
/// <param name="Person">Who made it.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Expires">Until when its prices hold, UTC.</param>
/// <param name="Lines">The lines.</param>
/// <param name="Required">What the required lines come to: the sum that an approval of nothing else agrees to.</param>
/// <param name="Recommended">What the recommended lines come to.</param>
/// <param name="Optional">What the optional lines come to.</param>
/// <param name="Range">From what is sure to what may come.</param>
/// <param name="OpenPrices">Lines whose price is still to be asked for; with any of these, nobody can agree to the quote.</param>
/// <param name="Approval">Whether the customer has agreed.</param>
/// <param name="Cautions">What stands beside it.</param>
public sealed record QuoteWire(
    string Id,
    string Unit,
    int Number,
    string? Plan,
    string Person,
    DateTimeOffset Time,
    DateTimeOffset Expires,
    ImmutableArray<QuoteLineWire> Lines,
    TotalsWire Required,
    TotalsWire Recommended,
    TotalsWire Optional,
    PriceRangeWire Range,
    ImmutableArray<string> OpenPrices,
    ApprovalStateWire Approval,
    ImmutableArray<string> Cautions);

/// <summary>Whether a customer has agreed to a quote.</summary>
/// <param name="State">Nobody agreed; agreed; covered by what was agreed before and its share; or to be asked again.</param>
/// <param name="Sum">What was agreed to with tax.</param>
/// <param name="Ceiling">Up to which sum the work may grow without asking again.</param>
/// <param name="Number">The number of the quote that was agreed to.</param>
/// <param name="By">Who agreed, and how.</param>
/// <param name="Time">When, UTC.</param>
public sealed record ApprovalStateWire(string State, MoneyWire? Sum, MoneyWire? Ceiling, int? Number, string? By, DateTimeOffset? Time);

/// <summary>A quote to be made from a plan, and what is to be added to it.</summary>
/// <param name="Person">Who makes it.</param>
/// <param name="Plan">The plan; the one that was chosen, or else the newest, where none is named.</param>
/// <param name="Prices">Prices that have been asked for since, by line.</param>
/// <param name="Leave">Recommended and optional lines that are left out.</param>
/// <param name="Extras">Further lines: oil, sundries, what the customer asked for.</param>
public sealed record QuoteRequest(
    [Words(100)] string Person,
    [Id] string? Plan = null,
    [Entries(0, 200)] ImmutableArray<LinePriceRequest>? Prices = null,
    [Entries(0, 200)][Words(130)] ImmutableArray<string>? Leave = null,
    [Entries(0, 200)] ImmutableArray<ExtraLineRequest>? Extras = null);

/// <summary>A price that has been asked for.</summary>
/// <param name="Line">The line.</param>
/// <param name="Price">Price of one without tax.</param>
public sealed record LinePriceRequest([Words(130)] string Line, MoneyRequest Price);

/// <summary>A further line.</summary>
/// <param name="Id">Its id within the quote.</param>
/// <param name="Text">What it is.</param>
/// <param name="Price">Price of one unit without tax; of an hour for labour, which stands in minutes.</param>
/// <param name="Quantity">How much: pieces, or minutes for labour.</param>
/// <param name="Sort">Labour, machining, or something else.</param>
/// <param name="Need">Whether the unit can go back without it.</param>
/// <param name="Chance">Chance that it will be needed at all.</param>
/// <param name="Tax">Which tax; none for the usual one.</param>
public sealed record ExtraLineRequest(
    [Id] string Id,
    [Words(200)] string Text,
    MoneyRequest Price,
    [Between(0.001, 100000)] decimal Quantity = 1,
    [OneOf("labour", "machining", "other")] string Sort = "other",
    [OneOf("required", "recommended", "optional")] string Need = "required",
    [Between(0, 1)] decimal Chance = 1,
    [Id] string? Tax = null);

/// <summary>That a customer agreed.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Number">The number of the quote.</param>
/// <param name="By">Who agreed, and how.</param>
/// <param name="Person">Who of the shop took it down.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Sum">What was agreed to with tax.</param>
/// <param name="Ceiling">Up to which sum the work may grow without asking again.</param>
/// <param name="Lines">The lines agreed to.</param>
public sealed record ApprovalWire(
    string Id, int Number, string By, string Person, DateTimeOffset Time, MoneyWire Sum, MoneyWire Ceiling, ImmutableArray<string> Lines)
{
    /// <summary>From the store.</summary>
    public static ApprovalWire From(Approval a, Rates rates) => new(
        a.Id, a.Number, a.By, a.Person, a.Time, MoneyWire.Of(a.Sum, rates), MoneyWire.Of(new Agreement(a.Sum, a.Share).Ceiling, rates), [.. a.Lines.Select(l => l.Line)]);
}

/// <summary>That a customer agrees to a quote: to its required lines, and those of the others that are named.</summary>
/// <param name="Number">The number of the quote; it must be the newest.</param>
/// <param name="By">Who agreed, and how: by telephone, in writing.</param>
/// <param name="Person">Who of the shop takes it down.</param>
/// <param name="Lines">Recommended and optional lines agreed to as well.</param>
public sealed record ApprovalRequest(
    [Between(1, 100000)] int Number, [Words(200)] string By, [Words(100)] string Person, [Entries(0, 200)][Words(130)] ImmutableArray<string>? Lines = null);
