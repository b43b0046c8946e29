using RebuildApi.PluginHost;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Pages;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Endpoints;

/// <summary>Gearbox designs with their rules, and the sheet to fill in.</summary>
public static class FamilyEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapFamilies(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("families");
        group.List<ListOf<FamilySummaryWire>>("/families", List, "listFamilies", "List families", "The gearbox designs that loaded plug-ins supply.");
        group.Read("/families/{family}", Get, "getFamily", "Get a family", "Everything the family declares, each number with its source.").Tagged().InUnits().Fails(Problems.UnknownFamily);
        group.List<ListOf<SheetRowWire>>("/families/{family}/sheet", SheetRows, "getSheet", "Get the teardown sheet",
            "Everything to look at and to read, in stripping order. The CSV form, filled in, goes back to measurements, findings and trials.").Fails(Problems.UnknownFamily);
        group.MapLater(HttpMethods.Get, "/families/{family}/sheet.html", Print).WithName("printSheet").WithSummary("Print the teardown sheet")
            .WithDescription("The same sheet as a page to print and fill in by hand.").InUnits().Fails(Problems.UnknownFamily).Produces<string>(200, "text/html");
        group.Read("/families/{family}/sheet.xlsx", Workbook, "getSheetWorkbook", "Get the teardown sheet as a workbook",
            "The same sheet as an .xlsx file. Filled in, it goes back to measurements, findings and trials like the CSV form.").InUnits().Fails(Problems.UnknownFamily);
        group.MapLater(HttpMethods.Post, "/families/validate", Validate).WithName("validateFamily").WithSummary("Check a family file")
            .WithDescription("Reads a family written as YAML and says what is wrong or doubtful in it, with line and column. Nothing is stored. Send the file itself as application/yaml, or its text in JSON.")
            .Needs(Scope.Read).Example("""{ "name": "wheel.yaml", "text": "family: one-wheel\nversion: 1.0.0\nname: One wheel\n" }""");
    }

    private static async Task<Found<FamilyCheckWire>> Validate(FamilyFileBody body, IPluginCatalog catalog)
    {
        // Reading waits on a worker process; that must not hold up a thread that answers requests.
        var read = await Task.Run(() => catalog.ReadFile(body.Name, body.Utf8));
        return new(FamilyCheckWire.From(read, body.Utf8));
    }

    private static Listing<FamilySummaryWire, ListOf<FamilySummaryWire>> List(FamilyBook families, Asked asked) => new(
        PagesOf.Whole([.. families.All.Select(f => FamilySummaryWire.From(f, asked.Show))], f => f.Id),
        (items, next, asOf) => new(items, next, asOf));

    private static Found<FamilyWire> Get(string family, FamilyBook families, Asked asked)
    {
        var index = families.Require(family);
        return new(FamilyWire.From(index, asked.Show), Etags.OfHash(index.DeclarationSha256, asked.Show.Inches ? "in" : "mm"));
    }

    private static Listing<SheetRowWire, ListOf<SheetRowWire>> SheetRows(string family, FamilyBook families, Asked asked) => new(
        PagesOf.Whole(new Sheet(families.Require(family), asked.Show).Rows(), r => r.Row.ToString(System.Globalization.CultureInfo.InvariantCulture)),
        (items, next, asOf) => new(items, next, asOf));

    private static Workbook Workbook(string family, FamilyBook families, Asked asked) =>
        new($"sheet-{family}.xlsx", WorkbookSheet.Of("Sheet", new Sheet(families.Require(family), asked.Show).Rows()));

    private static Frame Print(string family, FamilyBook families, Asked asked, PageWords words)
    {
        var paper = new TeardownPaper(families.Require(family), null, asked.Show, words).Write();
        return new Frame(words, paper.Title, "bench", PaperHtml.Of(paper));
    }
}
