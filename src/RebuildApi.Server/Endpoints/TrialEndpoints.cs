using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Sheets;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Endpoints;

/// <summary>Clearances read directly. Trials belong to the clearance and to exactly the parts that were fitted, never to one part.</summary>
public static class TrialEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapTrials(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("trials");
        group.Make("/units/{unit}/trials", Add, "addTrials", "Record a trial assembly",
                "Appends a trial assembly from JSON, or all those of a filled-in sheet as CSV: which pieces were fitted, and the gap that was read; tight when there was none.")
            .WithMetadata(new BodyLimit(4 << 20))
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId, Problems.RulesUnavailable, Problems.MalformedCsv, Problems.MalformedWorkbook)
            .Example("""
                { "clearance": "third-end-play", "person": "Ada", "bench": "bench-2", "pieces": [{ "member": "087" }], "readings": [{ "tight": true }] }
                """);
        group.List<ListOf<TrialWire>>("/units/{unit}/trials", List, "listTrials", "List the trial assemblies of a unit", "What stands; what was superseded is left out.").Tagged()
            .Fails(Problems.UnknownUnit);
    }

    private static async Task<CreatedAnswer<TrialBatchWire>> Add(
        string unit, TableOrBody<TrialBatch, TrialRequest> body, Asked asked, Bench bench, CancellationToken cancellation)
    {
        var answer = await bench.Change(unit, body.Request, work =>
        {
            var read = body.Value.Trials.Select((t, i) => new TrialIntake(work, body.Pointers[i]).Take(t)).ToArray();
            work.StopIfWrong();
            foreach (var trial in read)
                work.Session.Add(unit, trial!.Trial);
            return Answer.Created($"/v1/units/{unit}/trials", new TrialBatchWire(
                [.. read.Select(t => TrialWire.From(t!.Trial, asked.Show))],
                [.. work.Parts.Made.Select(m => ComponentWire.From(m.Component, [m.Placement]))],
                work.Version,
                [.. read.SelectMany(t => t!.Doubts.Select(d => DoubtWire.From(t.Trial.Id, d)))]), Etags.Of(Etags.Unit, work.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Listing<TrialWire, ListOf<TrialWire>>> List(string unit, Asked asked, Bench bench, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        return new(
            PagesOf.Whole([.. file.Trials.Select(t => TrialWire.From(t, asked.Show))], t => t.Id),
            (items, next, asOf) => new(items, next, asOf),
            Etags.Of(Etags.Unit, file.Unit.Version));
    }
}
