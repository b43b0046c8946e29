using System.Collections.Immutable;
using RebuildApi.Server.Composition;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>Where a bench begins: which gearbox, or one to take in.</summary>
public static class HomePage
{
    private const int MostCards = 120;

    private const string Mark = """
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><rect width="16" height="16" rx="3" fill="#0b5c7a"/><path d="M3 5h10M3 8h6M3 11h10" stroke="#fff" stroke-width="2"/></svg>
        """;

    /// <summary>Serves the page.</summary>
    public static void MapHomePage(this IEndpointRouteBuilder routes)
    {
        routes.MapPage("/", Show);
        routes.MapOpenPage("/icon.svg", () => TypedResults.Text(Mark, "image/svg+xml"), "the sign-in page shows it");
    }

    private static async Task<IResult> Show(IStore store, FamilyBook families, PageWords w, CancellationToken cancellation)
    {
        var units = (await OpenUnits.Of(store, cancellation)).Reverse().ToImmutableArray();
        var cards = string.Concat(units.Take(MostCards).Select(u => Card(u, w)));
        var more = units.Length > MostCards ? $"<p>{Page.Safe(w["home.many", ("n", Invariant(MostCards))])}</p>" : "";
        return new Frame(w, w["home.title"], "bench", $"""
            {(units.IsEmpty ? $"<p>{Page.Safe(w["home.none"])}</p>" : $"<ul class=\"cards\">{cards}</ul>")}{more}
            {Intake(families, w)}
            """, ["home.js"], new { words = w.Script("home.js"), families = families.All.Select(f => Family(f, w)) });
    }

    private static string Card(Unit unit, PageWords w) => $"""
        <li class="card"><p class="big">{Page.Safe(unit.Tag)}</p><p>{Page.Safe(unit.Family.Id)} · {Page.Safe(w["stage." + unit.Stage])}</p>
        <p class="row"><a class="button main" href="/bench/{unit.Id}">{Page.Safe(w["home.open"])}</a><a class="button" href="/units/{unit.Id}">{Page.Safe(w["home.unit"])}</a></p></li>
        """;

    private static string Intake(FamilyBook families, PageWords w) => $"""
        <h2>{Page.Safe(w["home.intake"])}</h2>
        <form id="intake" class="card fields">
        {Field(w, "tag", "<input id=\"tag\" name=\"tag\" required maxlength=\"60\" autocomplete=\"off\">")}
        {Field(w, "family", $"<select id=\"family\" name=\"family\">{string.Concat(families.All.Select(f => $"<option value=\"{f.Family.Version.Id}\">{Page.Safe(f.Family.Name.In(w.Language))}</option>"))}</select>")}
        {Field(w, "person", "<input id=\"person\" name=\"person\" required maxlength=\"100\" autocomplete=\"off\">")}
        {Field(w, "customer", "<input id=\"customer\" name=\"customer\" maxlength=\"200\" autocomplete=\"off\">")}
        {Field(w, "symptom", "<select id=\"symptom\" name=\"symptom\"></select>")}
        {Field(w, "gear", "<select id=\"gear\" name=\"gear\"></select>")}
        {Field(w, "words", "<textarea id=\"words\" name=\"words\" rows=\"2\" cols=\"40\" maxlength=\"2000\"></textarea>")}
        <button class="main">{Page.Safe(w["home.take"])}</button>
        </form>
        """;

    private static string Field(PageWords w, string name, string field) => $"<div><label for=\"{name}\">{Page.Safe(w["home." + name])}</label>{field}</div>";

    private static object Family(Engine.Snapshots.FamilyIndex f, PageWords w) => new
    {
        id = f.Family.Version.Id,
        symptoms = f.Family.Symptoms.Select(s => new { id = s.Id, name = s.Name.In(w.Language), gears = s.Gears }),
    };

    private static string Invariant(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
