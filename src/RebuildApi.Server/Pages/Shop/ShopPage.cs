using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Engine.Snapshots;
using RebuildApi.PluginHost;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>The shop at a glance: each gearbox by stage with what blocks it, parts to order today, instruments due, plug-ins.</summary>
public static class ShopPage
{
    private const int MostUnits = 150;
    private const int Soon = 30;

    /// <summary>Serves the page.</summary>
    public static void MapShopPage(this IEndpointRouteBuilder routes) => routes.MapPage("/shop", Show);

    private static async Task<IResult> Show(IStore store, Judging judging, IPluginCatalog plugins, TimeProvider time, PageWords w, CancellationToken cancellation)
    {
        var open = await OpenUnits.Of(store, cancellation);
        var rows = new List<(string Stage, string Row)>();
        foreach (var unit in open.Take(MostUnits))
        {
            if (await store.File(unit.Id, cancellation) is { } file)
                rows.Add((unit.Stage, Tables.Row($"<a href=\"/units/{unit.Id}\">{Page.Safe(unit.Tag)}</a>", $"<span class=\"one\">{Page.Safe(unit.Family.Id)}</span>", Blocks(file, judging, w))));
        }

        var instruments = (await store.Instruments(null, 500, cancellation)).Items;
        var now = time.GetUtcNow();
        return new Frame(w, w["shop.title"], "shop", $"""
            {(rows.Count == 0 ? $"<p>{Page.Safe(w["home.none"])}</p>" : string.Concat(rows.GroupBy(r => r.Stage).OrderBy(g => UnitStages.Way.IndexOf(g.Key)).Select(g => Stage(g.Key, g.Select(r => r.Row), w))))}
            <h2>{Page.Safe(w["shop.orders"])}</h2>{await Orders(open, store, now, w, cancellation)}
            <h2>{Page.Safe(w["shop.instruments"])}</h2>{Instruments(instruments, DateOnly.FromDateTime(now.UtcDateTime), w)}
            <h2>{Page.Safe(w["shop.plugins"])}</h2>{Tables.Of(w["shop.plugins"], [w["shop.plugin"], w["shop.state"], w["shop.why"]], plugins.Plugins.Select(Plugin))}
            """);
    }

    private static string Stage(string stage, IEnumerable<string> rows, PageWords w)
    {
        var all = rows.ToArray();
        var name = $"{w["stage." + stage]}: {all.Length.ToString(CultureInfo.InvariantCulture)}";
        return $"<h2>{Page.Safe(name)}</h2>{Tables.Of(name, [w["shop.unit"], w["home.family"], w["shop.blocks"]], all)}";
    }

    private static string Blocks(UnitFile file, Judging judging, PageWords w)
    {
        if (judging.WhyNot(file) is { } why)
            return Page.Safe(why);
        var judged = judging.Judge(file);
        var blocks = judged.Answers.Blocks;
        if (blocks.IsEmpty)
            return $"<span class=\"o o-conforming\">{Page.Safe(w["unit.no-blocks"])}</span>";
        var more = blocks.Length > 1 ? " " + w["shop.more", ("n", (blocks.Length - 1).ToString(CultureInfo.InvariantCulture))] : "";
        return $"<strong>{Page.Safe(new Spoken(judged.Family, w.Language).Subject(blocks[0].Subject))}</strong> {Page.Safe(judged.Family.Say(blocks[0].Reason) + more)}";
    }

    private static async Task<string> Orders(ImmutableArray<Unit> open, IStore store, DateTimeOffset now, PageWords w, CancellationToken cancellation)
    {
        var tags = open.ToDictionary(u => u.Id, u => u.Tag, StringComparer.Ordinal);
        var chosen = (await store.All<PlanChoice>(ShopFilter.Every, cancellation)).Where(c => tags.ContainsKey(c.Unit)).GroupBy(c => c.Unit, StringComparer.Ordinal).Select(g => g.Last());
        var plans = new List<KeptPlan>();
        foreach (var choice in chosen)
        {
            if (await store.Find<KeptPlan>(choice.Plan, cancellation) is { } plan)
                plans.Add(plan);
        }

        var orders = ToOrder.Of(
            plans, await store.All<Part>(ShopFilter.Every, cancellation), await store.All<StockItem>(ShopFilter.Every, cancellation),
            Reserved.Of(await store.All<Reservation>(ShopFilter.Every, cancellation), now));
        var rates = await store.Rates(cancellation);
        return orders.IsEmpty
            ? $"<p>{Page.Safe(w["shop.none-to-order"])}</p>"
            : Tables.Of(w["shop.orders"], [w["shop.part"], w["shop.vendor"], w["quote.quantity"], w["quote.price"], w["shop.lead"], w["shop.for"]], orders.Select(o => Order(o, tags, rates)));
    }

    private static string Order(ToOrder o, Dictionary<string, string> tags, Rates rates) => Tables.Row(
        $"{Page.Safe(o.Part.Name)}<br><span class=\"soft\">{Page.Safe(o.Part.VendorNumber ?? o.Part.Id)}</span>", Page.Safe(o.Part.Vendor),
        o.Quantity.ToString(CultureInfo.InvariantCulture), Page.Safe(new Sums(rates).Of(MoneyWire.Of(o.Part.Price, rates))),
        o.Part.LeadDays.ToString(CultureInfo.InvariantCulture), string.Join(", ", o.Units.Select(u => $"<a href=\"/units/{u}\">{Page.Safe(tags[u])}</a>")));

    private static string Instruments(IEnumerable<Instrument> instruments, DateOnly today, PageWords w)
    {
        var due = instruments.Where(i => i.State.CalibrationDue is null || i.State.CalibrationDue <= today.AddDays(Soon)).OrderBy(i => i.State.CalibrationDue).ToArray();
        return due.Length == 0
            ? $"<p>{Page.Safe(w["shop.none-due"])}</p>"
            : Tables.Of(w["shop.instruments"], [w["shop.instrument"], w["shop.due"]], due.Select(i => Tables.Row(Page.Safe(i.Name), Due(i, today, w))));
    }

    private static string Due(Instrument i, DateOnly today, PageWords w) => i.State.CalibrationDue is not { } day
        ? $"<span class=\"o o-not-assessed\">{Page.Safe(w["shop.no-due"])}</span>"
        : day < today
            ? $"<span class=\"o o-nonconforming\">{PaperHead.Day(day)} {Page.Safe(w["shop.overdue"])}</span>"
            : $"<span class=\"o o-inconclusive\">{PaperHead.Day(day)} {Page.Safe(w["shop.soon"])}</span>";

    private static string Plugin(PluginStatus p) => Tables.Row(
        Page.Safe(p.Id), $"<span class=\"o o-{(p.State == PluginState.Loaded ? "conforming" : "inconclusive")}\">{Kebab.Of(p.State)}</span>", Page.Safe(p.Reason));
}
