using System.Globalization;
using RebuildApi.Engine.Reasons;
using RebuildApi.PluginHost;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>The shop at a glance: each gearbox with what blocks it, instruments due, plug-ins.</summary>
public static class ShopPage
{
    private const int MostUnits = 150;
    private const int Soon = 30;

    /// <summary>Serves the page.</summary>
    public static void MapShopPage(this IEndpointRouteBuilder routes) => routes.MapPage("/shop", Show);

    private static async Task<IResult> Show(IStore store, Judging judging, IPluginCatalog plugins, TimeProvider time, CancellationToken cancellation)
    {
        var w = PageWords.English;
        var rows = new List<string>();
        foreach (var unit in (await OpenUnits.Of(store, cancellation)).OrderBy(u => UnitStages.Way.IndexOf(u.Stage)).Take(MostUnits))
        {
            if (await store.File(unit.Id, cancellation) is { } file)
                rows.Add(Row(file, judging, w));
        }

        var instruments = (await store.Instruments(null, 500, cancellation)).Items;
        return new Frame(w, w["shop.title"], "shop", $"""
            {Table([w["shop.unit"], w["shop.stage"], w["shop.blocks"]], rows)}
            <h2>{Page.Safe(w["shop.instruments"])}</h2>{Instruments(instruments, DateOnly.FromDateTime(time.GetUtcNow().UtcDateTime), w)}
            <h2>{Page.Safe(w["shop.plugins"])}</h2>{Table([w["shop.plugin"], w["shop.state"], w["shop.why"]], plugins.Plugins.Select(Plugin))}
            """);
    }

    private static string Row(UnitFile file, Judging judging, PageWords w) =>
        $"<tr><td><a href=\"/units/{file.Unit.Id}\">{Page.Safe(file.Unit.Tag)}</a></td><td>{Page.Safe(w["stage." + file.Unit.Stage])}</td><td>{Blocks(file, judging, w)}</td></tr>\n";

    private static string Blocks(UnitFile file, Judging judging, PageWords w)
    {
        if (judging.WhyNot(file) is { } why)
            return Page.Safe(why);
        var blocks = judging.Judge(file).Answers.Blocks;
        if (blocks.IsEmpty)
            return Page.Safe(w["unit.no-blocks"]);
        var more = blocks.Length > 1 ? " " + w["shop.more", ("n", (blocks.Length - 1).ToString(CultureInfo.InvariantCulture))] : "";
        return Page.Safe(ReasonText.Words(blocks[0].Reason) + more);
    }

    private static string Instruments(IEnumerable<Instrument> instruments, DateOnly today, PageWords w)
    {
        var due = instruments.Where(i => i.State.CalibrationDue is null || i.State.CalibrationDue <= today.AddDays(Soon)).OrderBy(i => i.State.CalibrationDue).ToArray();
        return due.Length == 0 ? $"<p>{Page.Safe(w["shop.none-due"])}</p>" : Table([w["shop.instrument"], w["shop.due"]], due.Select(i => Due(i, today, w)));
    }

    private static string Due(Instrument i, DateOnly today, PageWords w)
    {
        var when = i.State.CalibrationDue is not { } day
            ? $"<span class=\"o o-not-assessed\">{Page.Safe(w["shop.no-due"])}</span>"
            : day < today
                ? $"<span class=\"o o-nonconforming\">{Iso(day)} {Page.Safe(w["shop.overdue"])}</span>"
                : $"<span class=\"o o-inconclusive\">{Iso(day)} {Page.Safe(w["shop.soon"])}</span>";
        return $"<tr><td>{Page.Safe(i.Name)}</td><td>{when}</td></tr>";
    }

    private static string Plugin(PluginStatus p) =>
        $"<tr><td>{Page.Safe(p.Id)}</td><td><span class=\"o o-{(p.State == PluginState.Loaded ? "conforming" : "inconclusive")}\">{Kebab.Of(p.State)}</span></td><td>{Page.Safe(p.Reason)}</td></tr>";

    private static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Table(string[] heads, IEnumerable<string> rows) =>
        $"<div class=\"scroll\"><table><thead><tr>{string.Concat(heads.Select(h => $"<th scope=\"col\">{Page.Safe(h)}</th>"))}</tr></thead><tbody>{string.Concat(rows)}</tbody></table></div>";
}
