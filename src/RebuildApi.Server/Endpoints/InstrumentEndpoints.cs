using System.Collections.Immutable;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Measuring instruments and their calibration.</summary>
public static class InstrumentEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapInstruments(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("instruments");
        group.Make("/instruments", Register, "registerInstrument", "Register an instrument",
                "Its resolution, its limit of error and the standard it was set by go into the uncertainty of everything that is read with it; readings beyond its range are doubted.")
            .Needs(Scope.Office).Fails(Problems.InvalidContent, Problems.DuplicateId)
            .Example("""
                { "id": "mic-25", "name": "Micrometer 0-25", "type": "outside-micrometer", "resolution": { "value": 0.001, "unit": "mm" },
                  "limitOfError": { "value": 0.004, "unit": "mm" }, "referenceUncertainty": { "value": 0.0003, "unit": "mm" },
                  "range": { "low": { "value": 0, "unit": "mm" }, "high": { "value": 25, "unit": "mm" } }, "calibrationDue": "2027-01-31" }
                """);
        group.List<ListOf<InstrumentWire>>("/instruments", List, "listInstruments", "List instruments", "Instruments in the order of their ids.");
        group.Read("/instruments/{instrument}", Get, "getInstrument", "Get an instrument", "One instrument; its ETag is what a change must name.").Tagged()
            .InUnits().Fails(Problems.UnknownInstrumentId);
        group.Change("/instruments/{instrument}", Change, "changeInstrument", "Change an instrument",
                "Changes the fields that are sent. Verdicts are worked out anew with it; judgements that someone relied on keep what stood then.")
            .Needs(Scope.Office).Fails(Problems.UnknownInstrumentId, Problems.InvalidContent)
            .Example("""{ "calibrationDue": "2028-01-31" }""");
    }

    private static async Task<CreatedAnswer<InstrumentWire>> Register(
        Body<InstrumentRequest> body, Asked asked, IStore store, IIdSource ids, CancellationToken cancellation)
    {
        var sent = body.Value;
        var complaints = new Complaints();
        var state = InstrumentIntake.Read(sent, sent.Id ?? ids.Next(), complaints);
        complaints.ThrowIfAny(Problems.InvalidContent);
        var answer = await store.Write(body.Request, session =>
        {
            if (session.Instrument(state!.Id) is not null)
                throw new DuplicateIdException("instrument", state.Id);
            var put = session.Put(new Instrument(state, sent.Name, 0), null);
            return Answer.Created("/v1/instruments/" + state.Id, InstrumentWire.From(put, asked.Show), Etags.Of(Etags.Instrument, put.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static Listing<InstrumentWire, ListOf<InstrumentWire>> List(Asked asked, IStore store)
    {
        PageReader<Instrument> pages = store.Instruments;
        return new(pages.Select(i => InstrumentWire.From(i, asked.Show)), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<Found<InstrumentWire>> Get(string instrument, Asked asked, IStore store, CancellationToken cancellation)
    {
        var found = await store.Instrument(instrument, cancellation) ?? throw Unknown();
        return new(InstrumentWire.From(found, asked.Show), Etags.Of(Etags.Instrument, found.Version));
    }

    private static async Task<ChangedAnswer<InstrumentWire>> Change(
        string instrument, HttpContext http, Body<InstrumentChangeRequest> body, Asked asked, IStore store, CancellationToken cancellation)
    {
        var expected = Writes.ExpectedVersion(http, Etags.Instrument);
        var answer = await store.Write(body.Request, session =>
        {
            var now = session.Instrument(instrument) ?? throw Unknown();
            if (expected is { } seen && seen != now.Version)
                throw Conflict(now, seen, asked.Show);
            var put = session.Put(Apply(body, now), expected);
            return Answer.Changed(InstrumentWire.From(put, asked.Show), Etags.Of(Etags.Instrument, put.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static Instrument Apply(Body<InstrumentChangeRequest> body, Instrument now)
    {
        var complaints = new Complaints();
        var state = InstrumentIntake.Change(body.Value, body.Given, now.State, complaints);
        complaints.ThrowIfAny(Problems.InvalidContent);
        return now with { State = state, Name = body.Value.Name ?? now.Name };
    }

    private static ProblemException Conflict(Instrument now, long seen, Display show) => new(Problems.VersionConflict, $"The instrument is at version {now.Version}, not {seen}.")
    {
        Extras = new Dictionary<string, object> { ["currentVersion"] = now.Version, ["yourVersion"] = seen, ["current"] = InstrumentWire.From(now, show) }.ToExtras(),
        Headers = ImmutableSortedDictionary<string, string>.Empty.Add("ETag", Etags.Of(Etags.Instrument, now.Version)),
    };

    private static ProblemException Unknown() => new(Problems.UnknownInstrumentId, "No instrument of this id is registered.");
}
