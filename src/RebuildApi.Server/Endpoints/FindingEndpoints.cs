using RebuildApi.Contracts;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Sheets;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Endpoints;

/// <summary>What was seen on parts. Findings are appended and superseded, never edited.</summary>
public static class FindingEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapFindings(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("parts");
        group.Make("/units/{unit}/findings", Add, "addFindings", "Record findings",
                """
                Appends a batch of findings, all or none, from JSON or from a filled-in sheet as CSV: damage by the standard's class, attributes from the family's lists,
                or that a part was inspected and is sound. A finding at a position where no part is recorded yet records the part as found there.
                """)
            .WithMetadata(new BodyLimit(4 << 20))
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId, Problems.RulesUnavailable, Problems.MalformedCsv, Problems.MalformedWorkbook)
            .Example("""
                { "person": "Ada", "bench": "bench-1",
                  "findings": [{ "position": "third-gear", "damage": { "class": "macropitting", "extent": "slight" } }] }
                """);
        group.List<ListOf<FindingWire>>("/units/{unit}/findings", List, "listFindings", "List the findings of a unit", "What stands; what was superseded is left out.").Tagged()
            .Fails(Problems.UnknownUnit);
    }

    private static async Task<CreatedAnswer<FindingBatchWire>> Add(string unit, TableOrBody<FindingBatchRequest, FindingBatchRequest> body, Bench bench, CancellationToken cancellation)
    {
        var answer = await bench.Change(unit, body.Request, work =>
        {
            var read = body.Value.Findings.Select((f, i) => Take(work, body.Value, f, body.Pointers[i])).ToArray();
            work.StopIfWrong();
            foreach (var finding in read)
                work.Session.Add(unit, finding!);
            return Answer.Created($"/v1/units/{unit}/findings", new FindingBatchWire(
                [.. read.Select(f => FindingWire.From(f!))],
                [.. work.Parts.Made.Select(m => ComponentWire.From(m.Component, [m.Placement]))],
                work.Version), Etags.Of(Etags.Unit, work.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Listing<FindingWire, ListOf<FindingWire>>> List(string unit, Bench bench, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        return new(
            PagesOf.Whole([.. file.Findings.Select(FindingWire.From)], f => f.Id),
            (items, next, asOf) => new(items, next, asOf),
            Etags.Of(Etags.Unit, file.Unit.Version));
    }

    private static Finding? Take(BenchWork work, FindingBatchRequest batch, FindingRequest sent, string pointer)
    {
        var observation = Observation(sent, pointer, work.Complaints);
        var component = work.Parts.Find(sent.Position, sent.Component, pointer, "position");
        if (component is null || observation is null)
            return null;
        CheckAgainst(work.Family.Kinds[component.Kind], observation, pointer, work.Complaints);
        var taken = sent.Taken(batch).ToContract(pointer, work.Now, work.KnowsInstrument, work.Complaints);
        return new Finding(sent.Id ?? work.Ids.Next(), component.Id, component.Revision, observation, sent.Note, taken, sent.Supersedes);
    }

    private static Observation? Observation(FindingRequest sent, string pointer, Complaints complaints)
    {
        if (new[] { sent.Damage is not null, sent.Attribute is not null, sent.Sound }.Count(x => x) == 1)
        {
            return sent.Damage is { } d ? new DamageSeen(d.Class, d.Extent, d.Place)
                : sent.Attribute is { } a ? new AttributeSeen(a.Id, a.Value)
                : new Sound();
        }

        complaints.Add(pointer, FieldProblems.Contradiction, "A finding is exactly one of damage, attribute and sound.");
        return null;
    }

    private static void CheckAgainst(PartKind kind, Observation observation, string pointer, Complaints complaints)
    {
        if (observation is DamageSeen damage)
            AttributeCheck.CheckDamage(kind, damage.Class, pointer + "/damage/class", complaints);
        if (observation is AttributeSeen attribute)
            AttributeCheck.Check(kind, attribute.Attribute, attribute.Value, pointer + "/attribute/id", pointer + "/attribute/value", complaints);
    }
}
