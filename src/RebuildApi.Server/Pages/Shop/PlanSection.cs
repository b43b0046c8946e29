using System.Globalization;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>The plan of a gearbox drawn, what it needs from the shelf and from vendors, what it costs, and what must be settled before it holds.</summary>
public sealed class PlanSection(IStore store, PlanDesk desk, TimeProvider time)
{
    private const int MostConditions = 8;

    /// <summary>The section, or that there is no plan yet.</summary>
    public async Task<string> Of(Judged judged, PageWords w, CancellationToken cancellation)
    {
        var unit = judged.File.Unit.Id;
        var rates = await store.Rates(cancellation);
        var sums = new Sums(rates);
        var newest = await store.Newest<KeptPlan>(new ShopFilter(unit), cancellation);
        var none = newest is { Lines.IsEmpty: true } ? InTheWay(PlanDesk.Read(newest), sums, w) : "";
        if (await UnitPlan.Of(store, unit, null, cancellation) is not { } plan)
            return $"{(none.Length > 0 ? none : $"<p>{Page.Safe(w["plan.none"])}</p>")}<p class=\"row noprint\"><button type=\"button\" class=\"main\" id=\"make-plan\">{Page.Safe(w["plan.make"])}</button></p><p id=\"planned\" role=\"status\"></p>";
        var stands = await desk.StillStands(plan.Kept, cancellation);
        var kit = await Kit(plan, judged, rates, stands, cancellation);
        var named = new Spoken(judged.Family, w.Language);
        return $"""
            {none}
            <p>{Page.Safe(plan.Choice is { } c ? w["plan.chosen", ("person", c.Person), ("when", PaperHead.Minute(c.Time))] : w["plan.not-chosen"])} {(stands ? "" : $"<span class=\"o o-inconclusive\">{Page.Safe(w["plan.old"])}</span>")}</p>
            {(plan.Choice is null ? $"<p class=\"row noprint\"><button type=\"button\" class=\"main\" id=\"choose-plan\" data-plan=\"{plan.Kept.Id}\">{Page.Safe(w["plan.choose"])}</button></p>" : "")}
            <figure class="card">{new PlanDrawing(plan.Answer, judged.Family, sums.Of, w).Draw().Inside}</figure>
            {Price(plan.Answer, await Standing.Of(store, unit, cancellation), sums, w, unit)}
            {Orders(kit, sums, w)}{Picks(kit, w)}
            {Conditions(plan.Answer, named, w)}
            {(stands ? "" : $"<p class=\"row noprint\"><button type=\"button\" class=\"main\" id=\"make-plan\">{Page.Safe(w["plan.again"])}</button></p><p id=\"planned\" role=\"status\"></p>")}
            """;
    }

    private async Task<KitWire> Kit(UnitPlan plan, Judged judged, Rates rates, bool stands, CancellationToken cancellation) => new KitSheet(plan.Kept, judged.Family, new Display(false, false)).Of(
        await store.All<Part>(ShopFilter.Every, cancellation), await store.All<StockItem>(ShopFilter.Every, cancellation),
        await store.All<Reservation>(ShopFilter.Every, cancellation), rates, time.GetUtcNow(), stands);

    private static string Price(PlanWire plan, Standing? quote, Sums sums, PageWords w, string unit)
    {
        var cost = plan.Cost is { } c ? $"<p>{Page.Safe(w["plan.cost", ("parts", sums.Of(c.Parts)), ("labour", sums.Of(c.Labour)), ("comeback", sums.Of(c.Comeback))])}</p>" : "";
        if (quote is null)
            return cost + $"<p class=\"soft\">{Page.Safe(w["plan.no-quote"])}</p>";
        var shown = QuoteShown.Of(quote);
        var words = w["plan.quote", ("n", shown.Number.ToString(CultureInfo.InvariantCulture)), ("gross", sums.Of(shown.Required.Gross)), ("low", sums.Of(shown.Range.Low)), ("high", sums.Of(shown.Range.High))];
        return $"{cost}<p><strong>{Page.Safe(words)}</strong> <a href=\"/units/{unit}/quote\">{Page.Safe(w["unit.quote"])}</a></p>";
    }

    /// <summary>Why there is no plan, and what single thing would open one.</summary>
    private static string InTheWay(PlanWire plan, Sums sums, PageWords w) =>
        Listed(w["plan.in-the-way"], plan.Conflicts.Select(c => c.Text))
        + Listed(w["plan.unlocks"], plan.Unlocks.Select(u => w["plan.unlock", ("what", u.Text), ("cost", sums.Of(u.Cost))]));

    private static string Listed(string head, IEnumerable<string> all)
    {
        var items = string.Concat(all.Select(words => $"<li>{Page.Safe(words)}</li>"));
        return items.Length == 0 ? "" : $"<h3>{Page.Safe(head)}</h3><ul>{items}</ul>";
    }

    private static string Orders(KitWire kit, Sums sums, PageWords w)
    {
        var rows = kit.Orders.SelectMany(v => v.Lines).Select(l => Tables.Row(
                $"{Page.Safe(l.Name)}<br><span class=\"soft\">{Page.Safe(l.VendorNumber ?? l.Part)}</span>", Page.Safe(l.Vendor), Count(l.Quantity), Page.Safe(sums.Of(l.Price)), Count(l.LeadDays)))
            .Concat(kit.ToAskFor.Select(a => Tables.Row(Page.Safe(a.Name), Page.Safe(w["plan.ask"]), Count(a.Quantity), "", ""))).ToArray();
        return $"<h3>{Page.Safe(w["plan.orders"])}</h3>" + (rows.Length == 0
            ? $"<p>{Page.Safe(w["plan.no-orders"])}</p>"
            : Tables.Of(w["plan.orders"], [w["shop.part"], w["shop.vendor"], w["quote.quantity"], w["quote.price"], w["shop.lead"]], rows));
    }

    private static string Picks(KitWire kit, PageWords w)
    {
        var rows = kit.Picks.Select(p => Tables.Row(
            Page.Safe(p.Name), Page.Safe($"{p.Stock} {p.Bin}"), Count(p.Quantity),
            p.Short > 0 ? $"<span class=\"o o-nonconforming\">{Page.Safe(w["plan.short", ("n", Count(p.Short))])}</span>"
                : p.ReservedUntil is { } until ? $"<span class=\"o o-conforming\">{Page.Safe(w["plan.kept-until", ("when", PaperHead.Minute(until))])}</span>" : $"<span class=\"o o-not-assessed\">{Page.Safe(w["plan.not-kept"])}</span>")).ToArray();
        return rows.Length == 0 ? "" : $"<h3>{Page.Safe(w["plan.picks"])}</h3>{Tables.Of(w["plan.picks"], [w["shop.part"], w["plan.shelf-place"], w["quote.quantity"], w["shop.state"]], rows)}";
    }

    private static string Conditions(PlanWire plan, Spoken named, PageWords w)
    {
        if (plan.Conditions.IsEmpty)
            return "";
        var more = plan.Conditions.Length - MostConditions;
        return $"<h3>{Page.Safe(w["unit.conditions"])}</h3><ul>{string.Concat(plan.Conditions.Take(MostConditions).Select(c => $"<li><strong>{Page.Safe(named.Subject(c.Subject))}</strong> {Page.Safe(c.Text)}</li>"))}{(more > 0 ? $"<li>{Page.Safe(w["shop.more", ("n", Count(more))])}</li>" : "")}</ul>";
    }

    private static string Count(int n) => n.ToString(CultureInfo.InvariantCulture);
}
