using System.Collections.Immutable;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>What calibrations and gauge studies found of an instrument.</summary>
public static class InstrumentRecordEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapInstrumentRecords(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("instruments");
        group.Make("/instruments/{instrument}/calibrations", Calibrate, "addCalibration", "Record a calibration",
                "The errors as found. Where one lies beyond the instrument's limit of error, everything read since it was last found right is in doubt: verdicts say so, and the recall names it.")
            .Needs(Scope.Office).InUnits().Fails(Problems.UnknownInstrumentId, Problems.InvalidContent, Problems.DuplicateId)
            .Example("""
                { "person": "Ada", "due": "2028-01-31", "certificate": "K-118", "points": [
                  { "nominal": { "value": 10, "unit": "mm" }, "read": { "value": 10.001, "unit": "mm" } }, { "nominal": { "value": 25, "unit": "mm" }, "read": { "value": 25.002, "unit": "mm" } }] }
                """);
        group.List<ListOf<CalibrationWire>>("/instruments/{instrument}/calibrations", Calibrations, "listCalibrations", "List the calibrations of an instrument",
                "What each calibration found, in the order in which they were recorded.")
            .Fails(Problems.UnknownInstrumentId);
        group.Make("/instruments/{instrument}/studies", Study, "addStudy", "Keep a gauge study",
                "From the raw readings of a crossed study by analysis of variance. What it finds goes into every later budget of that characteristic that is read with the instrument.")
            .Needs(Scope.Office).InUnits().Fails(Problems.UnknownInstrumentId, Problems.InvalidContent, Problems.DuplicateId, Problems.NotComputable)
            .Example(StudyExample);
        group.List<ListOf<StudyWire>>("/instruments/{instrument}/studies", Studies, "listStudies", "List the gauge studies of an instrument",
                "Each with its readings and its whole result; the last one of a characteristic counts.")
            .Fails(Problems.UnknownInstrumentId);
    }

    private const string StudyExample = """
        { "family": "brackenmere-4", "kind": "third-gear", "characteristic": "bore", "person": "Ada", "readings": [
            { "appraiser": "Ada", "part": "1", "reading": { "value": 47.691, "unit": "mm" } }, { "appraiser": "Ada", "part": "1", "reading": { "value": 47.692, "unit": "mm" } },
            { "appraiser": "Ada", "part": "2", "reading": { "value": 47.704, "unit": "mm" } }, { "appraiser": "Ada", "part": "2", "reading": { "value": 47.706, "unit": "mm" } },
            { "appraiser": "Ben", "part": "1", "reading": { "value": 47.693, "unit": "mm" } }, { "appraiser": "Ben", "part": "1", "reading": { "value": 47.692, "unit": "mm" } },
            { "appraiser": "Ben", "part": "2", "reading": { "value": 47.705, "unit": "mm" } }, { "appraiser": "Ben", "part": "2", "reading": { "value": 47.707, "unit": "mm" } }] }
        """;

    private static async Task<CreatedAnswer<CalibrationWire>> Calibrate(
        string instrument, Body<CalibrationRequest> body, Asked asked, IStore store, CalibrationDesk desk, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            var kept = desk.Keep(session, session.Instrument(instrument) ?? throw Unknown(), body.Value);
            return Answer.Created($"/v1/instruments/{instrument}/calibrations", CalibrationWire.From(kept, asked.Show));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Listing<CalibrationWire, ListOf<CalibrationWire>>> Calibrations(string instrument, Asked asked, IStore store, CancellationToken cancellation)
    {
        _ = await store.Instrument(instrument, cancellation) ?? throw Unknown();
        var all = await store.Calibrations(instrument, cancellation);
        return new(PagesOf.Whole([.. all.Select(c => CalibrationWire.From(c, asked.Show))], c => c.Id), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<CreatedAnswer<StudyWire>> Study(
        string instrument, Body<StudyRequest> body, Asked asked, IStore store, StudyDesk desk, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            var known = session.Instrument(instrument) ?? throw Unknown();
            var kept = desk.Keep(session, known, body.Value);
            return Answer.Created($"/v1/instruments/{instrument}/studies", StudyDesk.Shown(kept, known.State.Resolution.Kind, asked.Show));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Listing<StudyWire, ListOf<StudyWire>>> Studies(string instrument, Asked asked, IStore store, CancellationToken cancellation)
    {
        var known = await store.Instrument(instrument, cancellation) ?? throw Unknown();
        var all = await store.Studies(instrument, cancellation);
        return new(
            PagesOf.Whole([.. all.Select(s => StudyDesk.Shown(s, known.State.Resolution.Kind, asked.Show))], s => s.Id),
            (items, next, asOf) => new(items, next, asOf));
    }

    private static ProblemException Unknown() => new(Problems.UnknownInstrumentId, "No instrument of this id is registered.");
}
