using System.Collections.Immutable;
using System.Text.Json;
using Microsoft.Extensions.Options;
using RebuildApi.Contracts;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>
/// The teardown sheet as a form. The whole sheet comes with the page, compact, and the page's own script shows one part at a time: a bench that
/// loses its connection goes on through the sheet, and what it enters waits on the device until it is sent.
/// </summary>
public static class BenchPage
{
    private static readonly string[] Scripts = ["fields.js", "photo.js", "bench.js"];
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { DefaultIgnoreCondition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull };

    /// <summary>Serves the page, and its changing part alone.</summary>
    public static void MapBenchPage(this IEndpointRouteBuilder routes)
    {
        routes.MapPage("/bench/{unit}", Show);
        routes.MapLater(HttpMethods.Get, "/bench/{unit}/state", State).Needs(Scope.Read).ExcludeFromDescription();
    }

    private static async Task<IResult> Show(string unit, Composition.Bench bench, Judging judging, TimeProvider time, IOptions<ServerOptions> options, PageWords w, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        if (judging.WhyNot(file) is { } why)
            return new Frame(w, w["bench.title", ("tag", file.Unit.Tag)], "bench", $"<p class=\"note\">{Page.Safe(w["bench.rules", ("why", why)])}</p>");
        var judged = judging.Judge(file);
        var sheet = new BenchSheet(judged.Family, w);
        var state = await StateOf(judged, bench.Store, w, cancellation);
        var instruments = (await bench.Store.Instruments(null, 500, cancellation)).Items;
        var today = DateOnly.FromDateTime(time.GetUtcNow().UtcDateTime);
        return new Frame(w, w["bench.title", ("tag", file.Unit.Tag)], "bench", Body(file, instruments, today, w), Scripts, new
        {
            words = Script(w, options.Value.AttachmentBytes),
            unit = new { id = file.Unit.Id },
            kinds = sheet.Kinds,
            parts = sheet.Parts,
            trials = sheet.Trials,
            damage = sheet.Damage,
            whole = UnitStages.IsBefore(file.Unit.Stage, UnitStages.Teardown) ? sheet.Whole : [],
            missing = state.Missing,
            state = state.Outcomes,
            seen = state.Seen,
            read = state.Read,
            tried = state.Tried,
            tests = state.Tests,
            photos = state.Photos,
            photoBytes = options.Value.AttachmentBytes,
        });
    }

    private static async Task<IResult> State(string unit, Composition.Bench bench, Judging judging, PageWords w, CancellationToken cancellation)
    {
        var state = await StateOf(judging.Judge(await bench.File(unit, cancellation)), bench.Store, w, cancellation);
        return TypedResults.Json(new { missing = state.Missing, state = state.Outcomes, seen = state.Seen, read = state.Read, tried = state.Tried, tests = state.Tests, photos = state.Photos }, Json);
    }

    private static async Task<BenchState> StateOf(Judged judged, IStore store, PageWords w, CancellationToken cancellation) =>
        new(judged, await store.All<TestDone>(new ShopFilter(judged.File.Unit.Id), cancellation), await store.All<Attachment>(new ShopFilter(judged.File.Unit.Id), cancellation), w);

    // How big a photo may be is a setting.
    private static Dictionary<string, string> Script(PageWords w, int bytes) =>
        w.Script(Scripts).ToDictionary(x => x.Key, x => x.Value.Replace("{limit}", PhotoSection.Size(bytes), StringComparison.Ordinal), StringComparer.Ordinal);

    private static string Body(UnitFile file, ImmutableArray<Instrument> instruments, DateOnly today, PageWords w) => $"""
        <p class="row"><a class="button" href="/units/{file.Unit.Id}">{Page.Safe(w["home.unit"])}</a><span>{Page.Safe(file.Unit.Family.Id)} · {Page.Safe(w["stage." + file.Unit.Stage])}</span></p>
        <div class="row card">
        <div><label for="person">{Page.Safe(w["home.person"])}</label><input id="person" maxlength="100" autocomplete="off"></div>
        <div><label for="bench">{Page.Safe(w["bench.place"])}</label><input id="bench" maxlength="100" autocomplete="off"></div>
        <div><label for="gauge">{Page.Safe(w["bench.gauge"])}</label><select id="gauge"><option value="">{Page.Safe(w["bench.no-gauge"])}</option>{string.Concat(instruments.Select(i => Option(i, today, w)))}</select></div>
        </div>
        <p id="left" class="big"></p><p id="heard" role="status" class="soft"></p>
        <div class="two"><div id="part" role="group" aria-labelledby="now"></div><section aria-labelledby="all"><h2 id="all">{Page.Safe(w["bench.parts"])}</h2><ol id="parts" class="parts"></ol></section></div>
        <dialog id="ask" aria-live="assertive"></dialog>
        """;

    private static string Option(Instrument instrument, DateOnly today, PageWords w)
    {
        var late = instrument.State.CalibrationDue < today ? $" ({w["bench.overdue"]})" : "";
        return $"<option value=\"{Page.Safe(instrument.State.Id)}\">{Page.Safe(instrument.Name + late)}</option>";
    }
}
