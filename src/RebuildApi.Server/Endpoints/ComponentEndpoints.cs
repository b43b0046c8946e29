using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Endpoints;

/// <summary>The parts of a unit and where they are.</summary>
public static class ComponentEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapComponents(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("parts");
        group.Make("/units/{unit}/components", Add, "addComponent", "Record or place a part",
                "Records a part in a position, or places a part that the shop has already: found there, chosen to go there, or fitted there.")
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId, Problems.PartElsewhere, Problems.RulesUnavailable)
            .Example("""{ "position": "third-gear", "role": "chosen", "origin": "new", "label": "drawer 12" }""");
        group.Make("/units/{unit}/components/{component}/revisions", Revise, "reviseComponent", "Record that a part was reworked",
                "Makes a new revision of the part. Readings and findings of the old revision stay with it, so the new one is to be read again.")
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.RevisionConflict, Problems.RulesUnavailable)
            .Example("""{ "label": "front face cut" }""");
        group.List<ListOf<ComponentWire>>("/units/{unit}/components", List, "listComponents", "List the parts of a unit", "Each part at its newest revision, with where it is.").Tagged()
            .Fails(Problems.UnknownUnit);
    }

    private static async Task<CreatedAnswer<ComponentWire>> Add(string unit, Body<ComponentRequest> body, Bench bench, CancellationToken cancellation)
    {
        var answer = await bench.Change(unit, body.Request, work =>
        {
            var sent = body.Value;
            var place = Place.Parse(sent.Position);
            var position = PartFinder.PositionOf(place, work.Family, "/position", work.Complaints);
            var attributes = Attributes(sent.Attributes, position?.Kind, work);
            work.StopIfWrong();
            var component = Known(sent, position!.Kind, work) ?? New(sent, position.Kind, attributes, work);
            var placement = new Placement(place.Position, place.Index, component.Id, sent.Role, sent.Facing, sent.IndexMark);
            work.Session.Place(unit, placement);
            if (sent.Role != PlacementRole.Chosen)
                Shelf.Take(work.Session, component, work.Now);
            var placements = work.Session.File(unit)!.Placements;
            return Answer.Created($"/v1/units/{unit}/components", ComponentWire.From(component, placements), Etags.Of(Etags.Unit, work.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<CreatedAnswer<ComponentWire>> Revise(
        string unit, string component, Body<RevisionRequest> body, Bench bench, CancellationToken cancellation)
    {
        var answer = await bench.Change(unit, body.Request, work =>
        {
            var now = work.Parts.Find(null, component, "", "position");
            var attributes = Attributes(body.Value.Attributes, now?.Kind, work);
            work.StopIfWrong();
            var next = now! with
            {
                Revision = now.Revision + 1,
                Attributes = now.Attributes.ToImmutableSortedDictionary().SetItems(attributes),
                Label = body.Value.Label ?? now.Label,
            };
            work.Session.Add(unit, next);
            return Answer.Created($"/v1/units/{unit}/components", ComponentWire.From(next, work.File.Placements), Etags.Of(Etags.Unit, work.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Listing<ComponentWire, ListOf<ComponentWire>>> List(string unit, Bench bench, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        return new(
            PagesOf.Whole([.. file.Components.OrderBy(c => c.Id, StringComparer.Ordinal).Select(c => ComponentWire.From(c, file.Placements))], c => c.Id),
            (items, next, asOf) => new(items, next, asOf),
            Etags.Of(Etags.Unit, file.Unit.Version));
    }

    private static Component? Known(ComponentRequest sent, string kind, BenchWork work)
    {
        if (sent.Id is null || work.Session.Component(sent.Id) is not { } known)
            return null;
        if (known.Kind != kind)
            work.Complaints.Add("/id", FieldProblems.UnknownKind, $"The part {known.Id} is a {known.Kind}; {sent.Position} takes a {kind}.", known.Kind, [kind]);
        if (sent.Attributes is not null || sent.Label is not null)
            work.Complaints.Add("/id", FieldProblems.Contradiction, "The shop has this part already; what is known of it is not changed by placing it.");
        work.StopIfWrong();
        return known;
    }

    private static Component New(ComponentRequest sent, string kind, ImmutableSortedDictionary<string, string> attributes, BenchWork work)
    {
        var component = new Component(sent.Id ?? work.Ids.Next(), 1, kind, sent.Origin, attributes, sent.Label);
        work.Session.Add(work.Unit, component);
        return component;
    }

    private static ImmutableSortedDictionary<string, string> Attributes(IReadOnlyDictionary<string, string>? sent, string? kind, BenchWork work)
    {
        if (sent is null || kind is null)
            return ImmutableSortedDictionary<string, string>.Empty;
        foreach (var (id, value) in sent)
            AttributeCheck.Check(work.Family.Kinds[kind], id, value, Pointer.Member("/attributes", id), Pointer.Member("/attributes", id), work.Complaints);
        return sent.ToImmutableSortedDictionary();
    }
}
