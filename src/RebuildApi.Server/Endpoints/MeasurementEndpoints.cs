using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Sheets;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Endpoints;

/// <summary>What was read of parts. Readings are appended and superseded, never edited.</summary>
public static class MeasurementEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapMeasurements(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("parts");
        group.Make("/units/{unit}/measurements", Add, "addMeasurements", "Record measurements",
                """
                Appends a batch of measurements, all or none, from JSON or from a filled-in sheet as CSV. A reading at a position where no part is recorded yet
                records the part as found there. A reading that would fit better in another unit or with two digits swapped is stored as sent and doubted in the answer.
                """)
            .WithMetadata(new KeyRequired(), new BodyLimit(4 << 20))
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId, Problems.RulesUnavailable, Problems.MalformedCsv, Problems.MalformedWorkbook)
            .Example("""
                { "person": "Ada", "bench": "bench-1", "instrument": "mic-25",
                  "measurements": [{ "at": "third-gear/length", "readings": [{ "value": 1.2045, "unit": "in" }, { "value": 30.60, "unit": "mm", "at": "opposite" }] }] }
                """);
        group.List<ListOf<MeasurementWire>>("/units/{unit}/measurements", List, "listMeasurements", "List the measurements of a unit", "What stands; what was superseded is left out.").Tagged()
            .Fails(Problems.UnknownUnit);
    }

    private static async Task<CreatedAnswer<MeasurementBatchWire>> Add(
        string unit, TableOrBody<MeasurementBatchRequest, MeasurementBatchRequest> body, Asked asked, Bench bench, CancellationToken cancellation)
    {
        var answer = await bench.Change(unit, body.Request, work =>
        {
            var read = body.Value.Measurements.Select((m, i) => new MeasurementIntake(work, body.Value, body.Pointers[i]).Take(m)).ToArray();
            work.StopIfWrong();
            var stored = read.Select(r => r!).ToImmutableArray();
            foreach (var (measurement, _) in stored)
                work.Session.Add(unit, measurement);
            return Answer.Created($"/v1/units/{unit}/measurements", new MeasurementBatchWire(
                [.. stored.Select(s => MeasurementWire.From(s.Measurement, asked.Show))],
                [.. work.Parts.Made.Select(m => ComponentWire.From(m.Component, [m.Placement]))],
                [.. stored.SelectMany(s => s.Doubts.Select(d => DoubtWire.From(s.Measurement.Id, d)))],
                work.Version), Etags.Of(Etags.Unit, work.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Listing<MeasurementWire, ListOf<MeasurementWire>>> List(string unit, Asked asked, Bench bench, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        return new(
            PagesOf.Whole([.. file.Measurements.Select(m => MeasurementWire.From(m, asked.Show))], m => m.Id),
            (items, next, asOf) => new(items, next, asOf),
            Etags.Of(Etags.Unit, file.Unit.Version));
    }
}
