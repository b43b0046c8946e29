using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire.Parts;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>One part over all units: it keeps its identity, and is in one place at a time.</summary>
public static class PartHistoryEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapPartHistory(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("parts");
        group.Read("/components/{component}", Get, "getComponent", "Where has this part been?",
                "Every revision, every place in every unit, and where it is now: in a unit, on the shelf, or neither.")
            .Fails(Problems.UnknownComponentId);
        group.Make("/units/{unit}/components/{component}/removals", Remove, "removeComponent", "Take a part out for good",
                "Clears every place of the part in the unit, so that it may be fitted in another or put on the shelf under its own id. What was read and seen of it stays.")
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId, Problems.UnknownComponentId)
            .Example("""{ "to": "shelf", "reason": "Another gear goes in.", "person": "Ada" }""");
    }

    private static async Task<Found<PartHistoryWire>> Get(string component, IStore store, CancellationToken cancellation)
    {
        var file = await store.Part(component, cancellation) ?? throw Unknown();
        var label = await store.Newest<PartLabel>(new ShopFilter(null, component), cancellation);
        return new(PartHistoryWire.From(file, label?.Code, await store.Find<StockItem>(component, cancellation)));
    }

    private static async Task<CreatedAnswer<PartRemovalWire>> Remove(string unit, string component, Body<PartRemovalRequest> body, Bench bench, CancellationToken cancellation)
    {
        var sent = body.Value;
        var answer = await bench.Store.Write(body.Request, session =>
        {
            var file = session.File(unit) ?? throw Bench.Unknown();
            var places = file.Placements.Where(p => p.Component == component).ToArray();
            if (places.Length == 0)
                throw Unknown();
            foreach (var place in places)
                session.Vacate(unit, place.Position, place.Index, place.Role);
            var removal = session.Put(
                new PartRemoval(
                    sent.Id ?? bench.Ids.Next(), unit, component, [.. places.Select(p => FormattableString.Invariant($"{p.Position}/{p.Index}/{p.Role.ToString().ToLowerInvariant()}"))],
                    sent.To, sent.Reason, sent.Person, bench.Time.GetUtcNow()), null);
            return Answer.Created("/v1/components/" + component, PartRemovalWire.From(removal), Etags.Of(Etags.Unit, session.Unit(unit)!.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static ProblemException Unknown() => new(Problems.UnknownComponentId, "No part of this id is there.");
}
