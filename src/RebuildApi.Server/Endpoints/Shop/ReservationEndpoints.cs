using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>What is kept on the shelf for a unit.</summary>
public static class ReservationEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapReservations(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("plans");
        group.List<ListOf<ReservationWire>>("/units/{unit}/reservations", List, "listReservations", "List what is kept for a unit", "Each lapses by itself at its time; what lapsed or was let go stays on the list.")
            .Fails(Problems.UnknownUnit);
        group.Make("/units/{unit}/reservations", Keep, "keepStock", "Keep things on the shelf for a unit",
                "What is named, or everything that a plan takes from the shelf: all of it or nothing. Asking again for the same thing holds it longer and takes no more.")
            .Fails(Problems.UnknownUnit, Problems.UnknownPlan, Problems.StockShort, Problems.InvalidContent)
            .Example("""{ "person": "Ada", "items": [{ "stock": "shelf-1", "count": 1 }], "hours": 48 }""");
        group.Change("/units/{unit}/reservations/{reservation}", Change, "changeReservation", "Let a reservation go", "Or hold it longer.")
            .Fails(Problems.UnknownUnit, Problems.UnknownReservation, Problems.StockShort)
            .Example("""{ "released": true }""");
    }

    private static async Task<Listing<ReservationWire, ListOf<ReservationWire>>> List(string unit, Bench bench, IStore store, CancellationToken cancellation)
    {
        await bench.File(unit, cancellation);
        PageReader<Reservation> pages = (after, limit, stop) => store.Page<Reservation>(new ShopFilter(unit), after, limit, stop);
        return new(pages.Select(r => ReservationWire.From(r, bench.Time.GetUtcNow())), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<CreatedAnswer<ReservationsWire>> Keep(string unit, Body<ReservationsRequest> body, Bench bench, IStore store, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            _ = session.Unit(unit) ?? throw Bench.Unknown();
            var now = bench.Time.GetUtcNow();
            var kept = new ReservationDesk(session, bench.Ids, now).Keep(unit, body.Value);
            return Answer.Created($"/v1/units/{unit}/reservations", new ReservationsWire([.. kept.Select(r => ReservationWire.From(r, now))]));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<ChangedAnswer<ReservationWire>> Change(
        string unit, string reservation, HttpContext http, Body<ReservationChangeRequest> body, Bench bench, IStore store, CancellationToken cancellation)
    {
        var expected = Writes.ExpectedVersion(http, Etags.Reservation);
        var answer = await store.Write(body.Request, session =>
        {
            _ = session.Unit(unit) ?? throw Bench.Unknown();
            var kept = session.Find<Reservation>(reservation) is { } r && r.Unit == unit ? r : throw new ProblemException(Problems.UnknownReservation, "The unit has no reservation of this id.");
            var now = bench.Time.GetUtcNow();
            if (body.Value.Hours is not null)
                new ReservationDesk(session, bench.Ids, now).RequireFree(unit, kept.Stock, kept.Count);
            var until = body.Value.Hours is { } hours ? now.AddHours(hours) : kept.Until;
            var put = session.Put(kept with { Released = kept.Released || body.Value.Released, Until = until }, expected);
            return Answer.Changed(ReservationWire.From(put, now), Etags.Of(Etags.Reservation, put.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }
}
