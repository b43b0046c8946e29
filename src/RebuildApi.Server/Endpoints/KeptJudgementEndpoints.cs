using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Judgements that someone relied on, as they stood then.</summary>
public static class KeptJudgementEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapKeptJudgements(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("decisions");
        group.List<ListOf<KeptJudgementWire>>("/units/{unit}/judgements", List, "listJudgements", "List the judgements that were kept of a unit",
            "One for each gate, decision and hand-over, oldest first, each with the hash of the rules and of what was known.").Fails(Problems.UnknownUnit);
        group.Read("/units/{unit}/judgements/{judgement}", Get, "getJudgement", "What was known and said then?", "A kept judgement with the snapshot that it was made from, as both were kept.")
            .Tagged().Fails(Problems.UnknownUnit, Problems.UnknownJudgement);
    }

    private static async Task<Listing<KeptJudgementWire, ListOf<KeptJudgementWire>>> List(string unit, IStore store, CancellationToken cancellation)
    {
        _ = await store.Unit(unit, cancellation) ?? throw Bench.Unknown();
        PageReader<JudgementKept> pages = (after, limit, stop) => store.Judgements(unit, after, limit, stop);
        return new(pages.Select(KeptJudgementWire.From), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<Found<WholeKeptJudgementWire>> Get(string unit, string judgement, IStore store, CancellationToken cancellation)
    {
        _ = await store.Unit(unit, cancellation) ?? throw Bench.Unknown();
        var kept = await store.Judgement(judgement, cancellation);
        if (kept?.Kept.Unit != unit)
            throw new ProblemException(Problems.UnknownJudgement, "No judgement of this id was kept of the unit.");
        return new(WholeKeptJudgementWire.From(kept), Etags.OfFile(kept.Kept.BodySha256));
    }
}
