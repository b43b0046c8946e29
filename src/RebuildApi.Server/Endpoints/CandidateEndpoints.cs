using System.Collections.Immutable;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Endpoints;

/// <summary>Which parts would run at a place of a unit with what is chosen there already.</summary>
public static class CandidateEndpoints
{
    private const string At = "/units/{unit}/positions/{position}/candidates";

    /// <summary>The routes.</summary>
    public static void MapCandidates(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("answers");
        group.List<AnswersOf<CandidateWire>>(At, Known, "listCandidates", "Which parts of the shop would run there?",
                "Parts of the right kind that the shop knows of and that are fitted nowhere, the best first: each is held against every pairing of the position with the other parts as they stand. Parts of other units are marked with the unit.")
            .Fails(Problems.UnknownUnit, Problems.UnknownPlace, Problems.RulesUnavailable);
        group.WorkOut(At, Spoken, "judgeCandidates", "Would these parts run there?",
                "The same for parts that are only spoken of, such as those of an offer. Nothing is stored.")
            .Fails(Problems.UnknownUnit, Problems.UnknownPlace, Problems.RulesUnavailable, Problems.InvalidContent)
            .Example("""{ "parts": [{ "label": "offer 1", "attributes": { "dog.form": "back-tapered" } }, { "label": "offer 2", "attributes": { "dog.form": "straight" } }] }""");
    }

    private static async Task<Listing<CandidateWire, AnswersOf<CandidateWire>>> Known(
        string unit, string position, Asked asked, Bench bench, CandidateSearch search, CancellationToken cancellation)
    {
        var (view, wanted) = search.At(await bench.File(unit, cancellation), position);
        var found = CandidateSearch.Judge(view, wanted, await search.Offered(wanted, cancellation), asked.Show);
        return new(PagesOf.Whole(found, c => c.Component), (items, next, asOf) => Wrap(view, wanted, items, found, next, asOf, asked.Show));
    }

    private static async Task<Found<AnswersOf<CandidateWire>>> Spoken(
        string unit, string position, Body<CandidatesRequest> body, Asked asked, Bench bench, CandidateSearch search, CancellationToken cancellation)
    {
        var (view, wanted) = search.At(await bench.File(unit, cancellation), position);
        var complaints = new Complaints();
        var spoken = new SpokenParts(view.Family, complaints);
        var offered = body.Value.Parts.Select((p, i) => spoken.Offer(p, wanted.Kind, i)).ToImmutableArray();
        complaints.ThrowIfAny(Problems.InvalidContent);
        var found = CandidateSearch.Judge(view, wanted, offered, asked.Show);
        return new(Wrap(view, wanted, found, found, null, bench.Time.GetUtcNow(), asked.Show));
    }

    private static AnswersOf<CandidateWire> Wrap(
        UnitView view, PartWanted wanted, ImmutableArray<CandidateWire> items, ImmutableArray<CandidateWire> all, string? next, DateTimeOffset asOf, Display show) => new(
        items, next, asOf, wanted.For.Unit.Id, wanted.For.Unit.Version, RuleWire.From(view.Family.IdentityOf(wanted.Place.Position)), view.InputsSha256,
        new SortedDictionary<string, int>(all.GroupBy(c => Kebab.Of(c.Outcome)).ToDictionary(g => g.Key, g => g.Count()), StringComparer.Ordinal),
        Cautions.Of(view.Family, show));
}
