using RebuildApi.Server.Errors;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>What is printed for a gearbox, as a page that prints clean.</summary>
public static class PaperPages
{
    private static readonly Display Metric = new(Inches: false, AsSent: false);

    /// <summary>Serves the pages.</summary>
    public static void MapPaperPages(this IEndpointRouteBuilder routes)
    {
        foreach (var kind in PaperDesk.Kinds)
        {
            routes.MapPage("/units/{unit}/" + kind, async (string unit, PaperDesk desk, PageWords w, CancellationToken cancellation) =>
                Show(await desk.Of(kind, unit, w, Metric, cancellation), $"/v1/units/{unit}/{kind}.pdf", unit, w));
        }
    }

    private static Frame Show(Paper paper, string pdf, string unit, PageWords w) => new(w, paper.Title, "bench", $"""
        <p class="row noprint"><a class="button" href="/units/{Page.Safe(unit)}">{Page.Safe(w["home.unit"])}</a><a class="button main" href="{Page.Safe(pdf)}">PDF</a></p>
        {PaperHtml.Of(paper)}
        """);
}
