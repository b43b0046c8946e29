using System.Collections.Immutable;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Gearboxes in the shop, from intake to hand-over.</summary>
public static class UnitEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapUnits(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("units");
        group.Make("/units", Open, "openUnit", "Take a unit in", "Takes a gearbox in and pins it to the edition of its family's rules that is loaded now.")
            .Fails(Problems.InvalidContent, Problems.DuplicateId)
            .Example("""
                { "tag": "SL-1042", "family": "brackenmere-4", "person": "Ada", "customer": "Ferry Lane Farm",
                  "complaint": [{ "symptom": "jumps-out-under-load", "gear": "third" }], "words": "Jumps out of third going uphill." }
                """);
        group.List<ListOf<UnitWire>>("/units", List, "listUnits", "List units", "Units in the order of their ids.").Takes(Stage);
        group.Read("/units/{unit}", Get, "getUnit", "Get a unit", "One unit; its ETag is what a change must name.").Tagged().Fails(Problems.UnknownUnit);
        group.Change("/units/{unit}", Change, "changeUnit", "Change a unit", "Changes the fields that are sent; null takes one away. Readings are never changed here, only superseded; the stage is changed by passing gates.")
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.RulesUnavailable)
            .Example("""{ "customer": "Ferry Lane Farm" }""");
    }

    /// <summary>Which stage is wanted.</summary>
    internal static readonly QueryOption Stage = new("stage", "Only units at this stage.", "string", UnitStages.All);

    private static async Task<CreatedAnswer<UnitWire>> Open(
        Body<UnitRequest> body, FamilyBook families, IStore store, IIdSource ids, TimeProvider time, CancellationToken cancellation)
    {
        var sent = body.Value;
        var complaints = new Complaints();
        var family = families.Find(sent.Family);
        if (family is null)
            complaints.AddUnknown("/family", Problems.UnknownFamily, $"There is no family {sent.Family}.", sent.Family, [.. families.All.Select(f => f.Family.Version.Id)]);
        var complaint = family is null ? [] : ComplaintCheck.Read(sent.Complaint, family, complaints);
        complaints.ThrowIfAny(Problems.InvalidContent);
        var unit = new Unit(sent.Id ?? ids.Next(), sent.Tag, family!.Family.Version, sent.Customer, complaint, sent.Words, UnitStages.Intake, time.GetUtcNow(), sent.Person, 0);
        var answer = await store.Write(body.Request, session => Created(session.Open(unit)), cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static Listing<UnitWire, ListOf<UnitWire>> List(HttpContext http, IStore store)
    {
        var stage = QueryText.Of(http, Stage.Name);
        PageReader<Unit> pages = (after, limit, cancellation) => store.Units(after, limit, stage, cancellation);
        return new(pages.Select(UnitWire.From), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<Found<UnitWire>> Get(string unit, IStore store, CancellationToken cancellation)
    {
        var found = await store.Unit(unit, cancellation) ?? throw Unknown();
        return new(UnitWire.From(found), Etags.Of(Etags.Unit, found.Version));
    }

    private static async Task<ChangedAnswer<UnitWire>> Change(
        string unit, HttpContext http, Body<UnitChangeRequest> body, FamilyBook families, IStore store, CancellationToken cancellation)
    {
        var expected = Writes.ExpectedVersion(http, Etags.Unit);
        var answer = await store.Write(body.Request, session =>
        {
            var now = session.Unit(unit) ?? throw Unknown();
            if (expected is { } seen && seen != now.Version)
                throw Conflict(now, seen);
            var changed = session.Change(Apply(body, now, families), expected);
            return Answer.Changed(UnitWire.From(changed), Etags.Of(Etags.Unit, changed.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static Unit Apply(Body<UnitChangeRequest> body, Unit now, FamilyBook families)
    {
        var (sent, given) = (body.Value, body.Given);
        var complaints = new Complaints();
        if (given.Contains("tag") && sent.Tag is null)
            complaints.Add("/tag", FieldProblems.MissingField, "The tag can't be taken away.");
        var complaint = given.Contains("complaint") ? ComplaintCheck.Read(sent.Complaint, families.RequirePinned(now.Family), complaints) : now.Complaint;
        complaints.ThrowIfAny(Problems.InvalidContent);
        return now with
        {
            Tag = sent.Tag ?? now.Tag,
            Customer = given.Contains("customer") ? sent.Customer : now.Customer,
            Words = given.Contains("words") ? sent.Words : now.Words,
            Complaint = complaint,
        };
    }

    private static StoredAnswer Created(Unit unit) =>
        Answer.Created("/v1/units/" + unit.Id, UnitWire.From(unit), Etags.Of(Etags.Unit, unit.Version));

    private static ProblemException Conflict(Unit now, long seen) => new(Problems.VersionConflict, $"The unit is at version {now.Version}, not {seen}.")
    {
        Extras = new Dictionary<string, object> { ["currentVersion"] = now.Version, ["yourVersion"] = seen, ["current"] = UnitWire.From(now) }.ToExtras(),
        Headers = ImmutableSortedDictionary<string, string>.Empty.Add("ETag", Etags.Of(Etags.Unit, now.Version)),
    };

    private static ProblemException Unknown() => new(Problems.UnknownUnit, "No unit of this id was taken in.");
}
