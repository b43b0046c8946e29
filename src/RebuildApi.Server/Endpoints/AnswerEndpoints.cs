using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Is each part good, will the clearances come right, may the parts run together. Worked out from what stands, and anew as soon as anything changes.</summary>
public static class AnswerEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapAnswers(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("answers").AddEndpointFilter<RouteGroupBuilder, KeepAnswers>();
        group.List<PartVerdictsWire>("/units/{unit}/verdicts", Verdicts, "getVerdicts", "Is each part good?",
                "Each part in stripping order with outcome, disposition and reasons; what is missing; what keeps the unit from going on; whether what was found explains the complaint.").Tagged()
            .Fails(Problems.UnknownUnit);
        group.List<ListOf<SettlingWire>>("/units/{unit}/settling", Settle, "getSettling", "What would settle the doubtful verdicts?",
                "For each inconclusive verdict on a reading: how many more readings, or which other instrument of the shop, and in how many simulated cases the verdict is then sure.")
            .Fails(Problems.UnknownUnit, Problems.RulesUnavailable);
        group.List<AnswersOf<ClearanceWire>>("/units/{unit}/clearances", Clearances, "getClearances", "Will the clearances come right, and how?",
                "Each clearance from parts, from trial assemblies or both, with the ring, shim or cut that would bring it right.").Tagged()
            .Fails(Problems.UnknownUnit);
        group.List<AnswersOf<PairingVerdictWire>>("/units/{unit}/pairings", Pairings, "getPairings", "May the parts run together?",
                "Each pairing with its outcome, what happens when it does not hold, and what cures it.").Tagged()
            .Fails(Problems.UnknownUnit);
        group.List<AnswersOf<NeighbourhoodWire>>("/units/{unit}/neighbourhoods", Neighbourhoods, "getNeighbourhoods", "May a sleeve serve all its gears?",
                "Each sleeve that serves two gears, judged with both at once: what comes out with each form of sleeve, and exchanges after which every side is compatible. What is right for one gear may be wrong for the other.").Tagged()
            .Fails(Problems.UnknownUnit);
    }

    private static async Task<Listing<PartVerdictWire, PartVerdictsWire>> Verdicts(string unit, Asked asked, Bench bench, Judging judging, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        if (Unjudged(file, asked, judging) is { } open)
            return new(PagesOf.Whole([open.Part], p => p.Subject), open.Verdicts);
        var sheet = new AnswerSheet(judging.Judge(file), asked.Show);
        return new(PagesOf.Whole(sheet.Parts, p => p.Subject), sheet.Verdicts, sheet.Etag, sheet.IsSteady);
    }

    private static async Task<Listing<SettlingWire, ListOf<SettlingWire>>> Settle(string unit, Bench bench, SettlingSheet sheet, CancellationToken cancellation) =>
        new(PagesOf.Whole(await sheet.Of(await bench.File(unit, cancellation), cancellation), s => s.Subject), (items, next, asOf) => new(items, next, asOf));

    private static async Task<Listing<ClearanceWire, AnswersOf<ClearanceWire>>> Clearances(
        string unit, Asked asked, Bench bench, Judging judging, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        if (Unjudged(file, asked, judging) is { } open)
            return new(PagesOf.Whole([open.Clearance], c => c.Clearance), open.Wrap);
        var sheet = new AnswerSheet(judging.Judge(file), asked.Show);
        return new(
            PagesOf.Whole(sheet.Clearances, c => c.Clearance), (items, next, asOf) => sheet.Wrap(items, next, asOf, sheet.ClearanceOutcomes), sheet.Etag, sheet.IsSteady);
    }

    private static async Task<Listing<PairingVerdictWire, AnswersOf<PairingVerdictWire>>> Pairings(
        string unit, Asked asked, Bench bench, Judging judging, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        if (Unjudged(file, asked, judging) is { } open)
            return new(PagesOf.Whole([open.Pairing], p => p.Pairing), open.Wrap);
        var judged = judging.Judge(file);
        var sheet = new AnswerSheet(judged, asked.Show, await bench.Store.Prices(judged.Family, cancellation));
        return new(
            PagesOf.Whole(sheet.Pairings, p => p.Pairing), (items, next, asOf) => sheet.Wrap(items, next, asOf, sheet.PairingOutcomes), sheet.Etag, sheet.IsSteady);
    }

    private static async Task<Listing<NeighbourhoodWire, AnswersOf<NeighbourhoodWire>>> Neighbourhoods(
        string unit, Asked asked, Bench bench, Judging judging, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        if (Unjudged(file, asked, judging) is { } open)
            return new(PagesOf.Whole([open.Neighbourhood], n => n.Sleeve), open.Wrap);
        var judged = judging.Judge(file);
        var sheet = new AnswerSheet(judged, asked.Show, await bench.Store.Prices(judged.Family, cancellation));
        return new(
            PagesOf.Whole(sheet.Neighbourhoods, n => n.Sleeve), (items, next, asOf) => sheet.Wrap(items, next, asOf, sheet.NeighbourhoodOutcomes), sheet.Etag, sheet.IsSteady);
    }

    private static Unjudged? Unjudged(UnitFile file, Asked asked, Judging judging) =>
        judging.WhyNot(file) is { } whyNot ? new Unjudged(file, whyNot, asked.Show) : null;
}
