using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>Gathers what a paper of a gearbox says.</summary>
public sealed class PaperDesk(Composition.Bench bench, Judging judging)
{
    /// <summary>The papers of a gearbox, by the word in their address.</summary>
    public static readonly string[] Kinds = ["teardown", "assembly", "quote", "record"];

    /// <summary>One of them.</summary>
    public async Task<Paper> Of(string kind, string unit, PageWords w, Display show, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        return kind switch
        {
            "quote" => await Quote(file.Unit, w, cancellation),
            "teardown" => new TeardownPaper(judging.View(file).Family, file.Unit.Tag, show, w).Write(),
            "assembly" => new AssemblyPaper(judging.Judge(file), (await UnitPlan.Of(bench.Store, unit, null, cancellation))?.Answer, bench.Time.GetUtcNow(), w).Write(),
            _ => new RecordPaper(judging.Judge(file), await RecordFacts.Of(bench.Store, unit, cancellation), bench.Time.GetUtcNow(), w).Write(),
        };
    }

    /// <summary>A paper as PDF.</summary>
    public IResult Pdf(Paper paper, PageWords w) => new BytesAnswer(new PaperPdf(paper, w, bench.Time.GetUtcNow()).Write(), "application/pdf");

    private async Task<Paper> Quote(Unit unit, PageWords w, CancellationToken cancellation)
    {
        var standing = await Standing.Of(bench.Store, unit.Id, cancellation) ?? throw QuoteDesk.UnknownQuote();
        return new QuotePaper(unit, QuoteShown.Of(standing), standing.Newest.Rates, w).Write();
    }
}
