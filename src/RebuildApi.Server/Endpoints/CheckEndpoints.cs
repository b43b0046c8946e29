using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Http.Timeouts;
using RebuildApi.Contracts;
using RebuildApi.Engine.Identity;
using RebuildApi.PluginHost;
using RebuildApi.Server.Access;
using RebuildApi.Server.Checks;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Endpoints;

/// <summary>Values held against limits by the million, or one for a cell of a spreadsheet. Nothing is stored.</summary>
public static class CheckEndpoints
{
    private static readonly QueryOption s_family = new("family", "The family of rows that name none.");

    private static readonly QueryOption[] s_row =
    [
        new("family", "Id of the family.", Required: true),
        new("at", "A characteristic as position/characteristic, or the id of a clearance.", Required: true),
        new("value", "The number.", Required: true),
        new("unit", "Its unit.", Required: true),
        new("uncertainty", "Standard uncertainty in the same unit."),
        new("instrument", "Id of the instrument, when no uncertainty is given."),
        new("show", "What is answered; the outcome when not said.", "string", ["outcome", "probability", "margin"]),
    ];

    /// <summary>The routes.</summary>
    public static void MapChecks(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("answers");
        group.MapLater(HttpMethods.Post, "/checks", Stream).WithName("checkRows").WithSummary("Check many values")
            .WithDescription("""
                Rows in, verdict rows out in the same order while they come, of any number, compressed or not (gzip, br). Each row has `at`, `value` and `unit`,
                and may have `family`, `uncertainty` (standard, in the same unit), `instrument` and `id`, which is given back. Without uncertainty or instrument the last
                digit counts as the step. The value is taken as the value of the characteristic, however many readings it came from. A row with a fault
                gets an error in its place; the last row says how many came to what, so that an answer cut short is noticed. Read while you send, or send everything first. Answers as NDJSON, or as a table when Accept says text/csv.
                """)
            .Needs(Scope.Read).WithMetadata(s_family, new DisableRequestTimeoutAttribute())
            .Produces<string>(200, LineBody.Ndjson, "text/csv")
            .Example("""{ "family": "brackenmere-4", "at": "third-gear/bore", "value": 1.8776, "unit": "in", "uncertainty": 0.0001, "instrument": "mic-25", "id": "row 1" }""");
        group.Read("/checks/one", One, "checkOne", "Check one value",
                "One word or number as plain text, for a formula in a spreadsheet cell.")
            .Open("a formula in a cell can send no header; it hears a verdict on numbers that it brings itself, and nothing of a unit, a customer or a price")
            .WithMetadata([.. s_row]).Produces<string>(200, "text/plain").Fails(Problems.StorageUnavailable, Problems.Timeout);
        group.MapLater(HttpMethods.Post, "/judgements", Judgements).WithName("judgeSnapshots").WithSummary("Judge many whole units")
            .WithDescription("""
                Whole units in, one on each line as GET /v1/units/{unit}/snapshot gives it, whole judgements out in the same order: what-if, and scripts that judge
                years of records again. A line with a fault gets an error in its place; the last line says how many came to what.
                """)
            .Needs(Scope.Read).WithMetadata(QueryOption.Units, new DisableRequestTimeoutAttribute())
            .Produces<JudgedLine>(200, LineBody.Ndjson)
            .Example("""
                { "unit": "u1", "family": { "id": "brackenmere-4", "semVer": "1.0.0" }, "complaint": [],
                  "components": [{ "id": "c1", "revision": 1, "kind": "third-gear", "origin": "unit", "attributes": {}, "label": null }],
                  "placements": [{ "position": "third-gear", "index": 1, "component": "c1", "role": "found", "facing": "unspecified", "indexMark": null }],
                  "measurements": [], "trials": [], "findings": [], "instruments": [],
                  "policy": { "version": "default", "decision": "guarded", "probability": 0.95, "duty": "ordinary", "limits": [] } }
                """);
        group.Read("/units/{unit}/snapshot", Snapshot, "getSnapshot", "Get everything known of a unit",
                "What the rules see of a unit, in the exact form that its hash is made of: change it and send it to POST /v1/judgements to ask what if.").Tagged()
            .Fails(Problems.UnknownUnit).Produces<object>(200, "application/json");
    }

    private static LineAnswer Judgements(LineBody body, Asked asked, IPluginCatalog catalog, FamilyBook families)
    {
        if (body.IsTable)
            throw new ProblemException(Problems.UnsupportedMediaType, $"A whole unit does not fit in a row of a table; taken here: {LineBody.Ndjson}.");
        var judge = new SnapshotJudge(catalog, families, asked.Show);
        return new(LineBody.Ndjson, (lines, answers, cancellation) =>
            new LineRun(judge, SnapshotJudge.LongestLine).Run(new LineBlocks(lines, SnapshotJudge.LongestLine), answers, null, cancellation));
    }

    private static async Task<IResult> Snapshot(string unit, Bench bench, HttpContext http, CancellationToken cancellation)
    {
        var snapshot = UnitSnapshots.Of(await bench.File(unit, cancellation));
        return Conditional.Matches(http, Etags.OfHash(Canonical.Sha256(snapshot)))
            ? TypedResults.Empty
            : new BytesAnswer(JsonSerializer.SerializeToUtf8Bytes(snapshot, ContractJson.Default.UnitSnapshot), "application/json; charset=utf-8");
    }

    private static async Task<LineAnswer> Stream(HttpContext http, LineBody body, CheckDesk desk)
    {
        var judge = new RowJudge(await desk.Open(http.RequestAborted), QueryText.Of(http, "family"));
        IVerdictForm form = WantsTable(http, body) ? new CsvVerdicts() : new JsonVerdicts();
        return new(form.MediaType, (rows, verdicts, cancellation) => new CheckRun(judge, form).Run(rows, body.IsTable, verdicts, null, cancellation));
    }

    private static bool WantsTable(HttpContext http, LineBody body)
    {
        var accept = http.Request.Headers.Accept.ToString();
        return accept.Contains("text/csv", StringComparison.OrdinalIgnoreCase)
            || (body.IsTable && !accept.Contains("json", StringComparison.OrdinalIgnoreCase));
    }

    private static async Task<IResult> One(HttpContext http, CheckDesk desk)
    {
        var judge = new RowJudge(await desk.Open(http.RequestAborted), null);
        var shown = Judge(http, judge);
        return TypedResults.Text(shown, "text/plain", Encoding.UTF8);
    }

    private static string Judge(HttpContext http, RowJudge judge)
    {
        var row = default(CheckRow);
        for (var field = 0; field < CheckRow.Names.Length - 1; field++)
            row.Set(field, Encoding.UTF8.GetBytes(QueryText.Of(http, CheckRow.Names[field]) ?? ""));
        if (judge.Judge(row, out var verdict) is { } fault)
        {
            throw new ProblemException(Problems.InvalidQuery, $"{fault.Field}: {fault.Problem.Title}.",
                [new FieldError("query/" + fault.Field, fault.Problem.Code, fault.Problem.Title + ".", fault.Got, null, fault.Allowed)]);
        }

        var margin = verdict.MarginInUnit.ToString("G6", System.Globalization.CultureInfo.InvariantCulture);
        return QueryText.Word(http, "show", "outcome", "probability", "margin") switch
        {
            "probability" => Math.Round(verdict.Result.Probability, 6).ToString(System.Globalization.CultureInfo.InvariantCulture),
            "margin" => margin,
            _ => Encoding.UTF8.GetString(JsonVerdicts.Word(verdict.Result.Outcome)),
        };
    }
}
