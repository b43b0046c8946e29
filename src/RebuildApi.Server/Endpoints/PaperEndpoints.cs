using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Pages;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Endpoints;

/// <summary>What a shop prints, as PDF.</summary>
public static class PaperEndpoints
{
    private const string Pdf = "application/pdf";

    private static readonly (string Kind, string Name, string Summary, string Description)[] Papers =
    [
        ("teardown", "printTeardown", "Print the teardown sheet of a unit", "Everything to look at and to read, in stripping order, to fill in by hand."),
        ("assembly", "printAssembly", "Print the assembly sheet", "By the plan that was chosen, or else the newest: the work in order, what goes where, the ring or cut of each clearance, room for what is read."),
        ("quote", "printQuote", "Print the quote", "The newest quote with its lines, tax, range, what was agreed to, and room for signatures."),
        ("record", "printRecord", "Print the hand-over record", "What was seen and read on each part, by whom, with what instrument, with uncertainty and limits; whose rules; decisions; cautions; room for signatures."),
    ];

    /// <summary>The routes.</summary>
    public static void MapPapers(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("papers");
        foreach (var (kind, name, summary, description) in Papers)
        {
            var route = group.Read($"/units/{{unit}}/{kind}.pdf", OfUnit(kind), name, summary, description).InUnits().Fails(Problems.UnknownUnit).Produces<string>(200, Pdf);
            // What a quote says was said when it was made: no rules are asked.
            route.Fails(kind == "quote" ? Problems.UnknownQuote : Problems.RulesUnavailable);
        }

        group.Read("/families/{family}/sheet.pdf", OfFamily, "printSheetPdf", "Print the teardown sheet of a family", "The same sheet for any gearbox of the family.")
            .InUnits().Fails(Problems.UnknownFamily).Produces<string>(200, Pdf);
    }

    private static Delegate OfUnit(string kind) => async (string unit, Asked asked, PaperDesk desk, PageWords words, CancellationToken cancellation) =>
        desk.Pdf(await desk.Of(kind, unit, words, asked.Show, cancellation), words);

    private static IResult OfFamily(string family, FamilyBook families, Asked asked, PaperDesk desk, PageWords words) =>
        desk.Pdf(new TeardownPaper(families.Require(family), null, asked.Show, words).Write(), words);
}
