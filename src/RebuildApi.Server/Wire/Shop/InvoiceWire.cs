using System.Collections.Immutable;
using RebuildApi.Engine.Money;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Shop;

/// <summary>A line for the invoicing tool.</summary>
/// <param name="Id">Its id; the same line always has the same, so that a tool that reads it twice bills it once.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Quote">The quote that was agreed to.</param>
/// <param name="Of">The line of the quote; none for what was added since.</param>
/// <param name="Sort">A part to order, one from the shelf, labour, machining, a core deposit, or something else.</param>
/// <param name="Text">What it is.</param>
/// <param name="Quantity">How much; negative where a line is taken off.</param>
/// <param name="Measure">Of what.</param>
/// <param name="Price">Price without tax of so many units as per says.</param>
/// <param name="Per">How many units the price is for.</param>
/// <param name="Net">Without tax.</param>
/// <param name="Tax">Which tax.</param>
/// <param name="TaxAmount">Its tax.</param>
/// <param name="Part">Number in the price list.</param>
/// <param name="Voids">The line that this one takes off.</param>
/// <param name="Person">Who wrote it.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Cursor">Where to go on reading after this line: the cursor for the next pull, even when there is no next page yet.</param>
public sealed record InvoiceLineWire(
    string Id,
    string Unit,
    string Quote,
    string? Of,
    string Sort,
    string Text,
    decimal Quantity,
    string Measure,
    MoneyWire Price,
    decimal Per,
    MoneyWire Net,
    TaxWire Tax,
    MoneyWire TaxAmount,
    string? Part,
    string? Voids,
    string Person,
    DateTimeOffset Time,
    string? Cursor = null)
{
    /// <summary>From the store.</summary>
    public static InvoiceLineWire From(InvoiceLine l) => new(
        l.Id, l.Unit, l.Quote, l.Of, l.What.Sort, l.What.Text, l.What.Quantity, l.What.Measure, new MoneyWire(l.What.Price ?? 0, l.Currency), l.What.Per,
        new MoneyWire(l.Net, l.Currency), TaxWire.From(l.What.Tax), new MoneyWire(l.TaxAmount, l.Currency), l.What.Part, l.Voids, l.Person, l.Time);

    /// <summary>From the store, with its place in the feed.</summary>
    public static InvoiceLineWire From(Recorded<InvoiceLine> recorded) => From(recorded.Value) with
    {
        Cursor = Requests.Cursor.Of(recorded.Sequence.ToString(System.Globalization.CultureInfo.InvariantCulture)),
    };
}

/// <summary>The invoice lines of a unit, held against what was agreed to.</summary>
/// <param name="Items">The lines.</param>
/// <param name="Next">The whole address of the next page; absent on the last.</param>
/// <param name="AsOf">When the list was read, UTC.</param>
/// <param name="Reconciliation">Whether what was invoiced is what was agreed to; none before anyone agreed.</param>
public sealed record InvoiceLinesWire(ImmutableArray<InvoiceLineWire> Items, string? Next, DateTimeOffset AsOf, ReconciliationWire? Reconciliation)
    : ListOf<InvoiceLineWire>(Items, Next, AsOf);

/// <summary>Whether what was invoiced is what was agreed to.</summary>
/// <param name="Agrees">Whether every line was invoiced as agreed and nothing else.</param>
/// <param name="Approved">The agreed sum with tax.</param>
/// <param name="Invoiced">What was invoiced with tax, voids taken off.</param>
/// <param name="Ceiling">Up to which sum nobody need be asked again.</param>
/// <param name="NeedsApproval">Whether the customer must be asked again.</param>
/// <param name="Reasons">Where they differ.</param>
public sealed record ReconciliationWire(
    bool Agrees, MoneyWire Approved, MoneyWire Invoiced, MoneyWire Ceiling, bool NeedsApproval, ImmutableArray<ReasonWire> Reasons)
{
    /// <summary>From the engine.</summary>
    public static ReconciliationWire From(Reconciliation r, Rates rates) => new(
        r.Agrees, MoneyWire.Of(r.Approved, rates), MoneyWire.Of(r.Invoiced, rates), MoneyWire.Of(r.Ceiling, rates), r.NeedsApproval,
        [.. r.Reasons.Select(ReasonWire.From)]);
}

/// <summary>Lines to be written for the invoicing tool.</summary>
/// <param name="Person">Who writes them.</param>
/// <param name="Lines">Lines of the agreed quote; every one that was agreed to and is not invoiced yet, where none is named.</param>
/// <param name="Voids">Invoice lines to take off again.</param>
/// <param name="Extras">Further lines, within the share by which the work may grow.</param>
public sealed record InvoiceRequest(
    [Words(100)] string Person,
    [Entries(0, 500)][Words(130)] ImmutableArray<string>? Lines = null,
    [Entries(0, 500)][Id] ImmutableArray<string>? Voids = null,
    [Entries(0, 200)] ImmutableArray<ExtraLineRequest>? Extras = null);

/// <summary>What came of writing invoice lines.</summary>
/// <param name="Items">The lines that were written.</param>
/// <param name="Reconciliation">Whether what is now invoiced is what was agreed to.</param>
public sealed record InvoicedWire(ImmutableArray<InvoiceLineWire> Items, ReconciliationWire Reconciliation);
