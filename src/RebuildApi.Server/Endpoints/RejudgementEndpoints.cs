using RebuildApi.Server.Access;
using System.Collections.Immutable;
using System.Text.Json;
using Microsoft.AspNetCore.Http.Timeouts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.PluginHost;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Json;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Endpoints;

/// <summary>Old units under new rules: what would change, as a shadow run that stores nothing, and moving one unit, which is recorded.</summary>
public static class RejudgementEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapRejudgements(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("families");
        group.Read("/families/{family}/rejudgements", Loaded, "rejudgeUnderLoaded", "What would the loaded rules say of all units?",
                "Judges every unit of the family again under the edition that is loaded now, and lists each verdict that would change, line by line while they are found. Nothing is stored.")
            .WithMetadata(new DisableRequestTimeoutAttribute()).Fails(Problems.UnknownFamily).Produces<RejudgementLine>(200, LineBody.Ndjson);
        group.MapLater(HttpMethods.Post, "/families/rejudgements", Proposed).WithName("rejudgeUnderFile").WithSummary("What would a family file say of all units?")
            .WithDescription("""
                Judges every unit of a family again under a family file that is sent and not stored, and lists each verdict that would change, line by line while they are
                found: what a changed limit would have done, before anybody approves it. Send the file itself as application/yaml, or its text in JSON.
                """)
            .Needs(Scope.Read).WithMetadata(new DisableRequestTimeoutAttribute()).Fails(Problems.InvalidContent).Produces<RejudgementLine>(200, LineBody.Ndjson)
            .Example("""
                { "name": "wheel.yaml", "text": "family: one-wheel\nversion: 1.1.0\nname: One wheel (invented)\nsources: {numbers: {invented: an example}}\nkinds: {wheel: {name: Wheel, measures: {width: {name: Width, new: 9.9 to 10.1 mm, service: 9.8 to 10.1 mm}}}}\npositions: {wheel: {name: Wheel, group: shaft}}\n" }
                """);
        routes.Resource("units").Make("/units/{unit}/edition-moves", Move, "moveEdition", "Move a unit to the loaded edition",
                "Pins a unit to the edition of its family's rules that is loaded now, as a decision that a person signs, and says which verdicts come out otherwise. A dry run says so without doing it.")
            .Needs(Scope.Office).Fails(Problems.UnknownUnit, Problems.UnknownFamily, Problems.InvalidContent, Problems.VersionConflict)
            .Example("""{ "person": "Ada", "bench": "bench-1", "reason": "The new edition has the maker's corrected end play." }""");
    }

    private static RejudgementStream Loaded(string family, FamilyBook families, Rejudging rejudging) => new(rejudging, families.Require(family));

    private static async Task<RejudgementStream> Proposed(FamilyFileBody body, IPluginCatalog catalog, Rejudging rejudging)
    {
        // Reading waits on a worker process; that must not hold up a thread that answers requests.
        var read = await Task.Run(() => catalog.ReadFile(body.Name, body.Utf8));
        var errors = read.Diagnostics.Where(d => d.IsError).Select(Complaint).ToImmutableArray();
        return read.Family is { } family && errors.IsEmpty
            ? new(rejudging, new FamilyIndex(family))
            : throw new ProblemException(Problems.InvalidContent, "The family file has errors.", errors);
    }

    private static async Task<CreatedAnswer<EditionMoveWire>> Move(string unit, Body<EditionMoveRequest> body, EditionDesk desk, CancellationToken cancellation) =>
        new(await desk.Move(unit, body, cancellation), body.Request.DryRun);

    private static FieldError Complaint(Contracts.Diagnostic d) =>
        new("/text", FieldProblems.NotAllowed.Code, FormattableString.Invariant($"{d.File}:{d.Line}:{d.Column}: {d.Field}: {d.Message}"), d.Code, null);
}

/// <summary>The lines of a shadow run, written while they are found.</summary>
internal sealed class RejudgementStream(Rejudging rejudging, FamilyIndex proposed) : IResult
{
    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var (body, cancellation) = (httpContext.Response.Body, httpContext.RequestAborted);
        httpContext.Response.ContentType = LineBody.Ndjson;
        var (units, changed, verdicts, notCompared) = (0, 0, 0, 0);
        await foreach (var unit in rejudging.Units(proposed, cancellation))
        {
            units++;
            changed += unit.Changes.IsEmpty ? 0 : 1;
            verdicts += unit.Changes.Length;
            notCompared += unit.WhyNot is null ? 0 : 1;
            foreach (var line in unit.Lines())
                await Write(line);
        }

        var family = proposed.Family.Version;
        await Write(new(null, null, null, null, new(FamilyEditionWire.From(family), proposed.DeclarationSha256, units, changed, verdicts, notCompared)));

        async Task Write(RejudgementLine line)
        {
            await JsonSerializer.SerializeAsync(body, line, WireJson.Options, cancellation);
            await body.WriteAsync("\n"u8.ToArray(), cancellation);
            await body.FlushAsync(cancellation);
        }
    }
}
