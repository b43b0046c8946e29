using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>What happens on the way from the approved plan to the finished unit: work done, and parts out to be machined.</summary>
public static class WorkEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapWork(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("plans");
        group.List<WorkListWire>("/units/{unit}/work", Done, "listWork", "List the work done on a unit", "Minutes that it really took, beside the minutes that were quoted.")
            .Fails(Problems.UnknownUnit);
        group.Make("/units/{unit}/work", Add, "addWork", "Record work done", "Never edited: what was written by mistake is taken off by a negative entry.")
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.RulesUnavailable)
            .Example("""{ "operation": "assemble", "minutes": 255, "person": "Ada", "bench": "bench-1" }""");
        group.List<ListOf<MachiningWire>>("/units/{unit}/machining", Out, "listMachining", "List the parts that were out to be machined",
                "Out, due, back; and what must be read again before a part goes on.")
            .Fails(Problems.UnknownUnit);
        group.Make("/units/{unit}/machining", Send, "sendToMachining", "Send a part out to be machined", "What the operation of the family asks to be read again is asked for when the part is back.")
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId, Problems.RulesUnavailable)
            .Example("""
                { "position": "hub-3-4", "operation": "face-hub-3-4-rear", "instruction": "Face the rear by 0.015 in from the rear face, square to the bore",
                  "at": "Quay Street Machining (invented)", "due": "2030-03-14", "person": "Ada", "price": { "minor": 3500, "currency": "XXX" } }
                """);
        group.Change("/units/{unit}/machining/{machining}", Change, "changeMachining", "Say that a part is back", "Or that it is due on another day, or costs something else.")
            .Fails(Problems.UnknownUnit, Problems.UnknownMachining, Problems.InvalidContent)
            .Example("""{ "back": "2030-03-13T15:30:00Z" }""");
    }

    private static async Task<Listing<WorkWire, WorkListWire>> Done(string unit, Bench bench, IStore store, CancellationToken cancellation)
    {
        await bench.File(unit, cancellation);
        var done = await store.All<WorkDone>(new ShopFilter(unit), cancellation);
        var quote = (await Standing.Of(store, unit, cancellation))?.Newest;
        return new(PagesOf.Whole([.. done.Select(WorkWire.From)], w => w.Id), (items, next, asOf) => new(items, next, asOf, Compare(quote, done)));
    }

    private static ImmutableArray<MinutesWire> Compare(Quote? quote, ImmutableArray<WorkDone> done)
    {
        var quoted = (quote?.Lines ?? []).Where(l => l.Sort == "labour").GroupBy(l => l.Operation ?? l.Id, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(l => l.Quantity), StringComparer.Ordinal);
        var taken = done.GroupBy(w => w.Operation, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(w => w.Minutes), StringComparer.Ordinal);
        return
        [
            .. quoted.Keys.Union(taken.Keys).Order(StringComparer.Ordinal)
                .Select(o => (Id: o, Quoted: quoted.GetValueOrDefault(o), Done: taken.GetValueOrDefault(o)))
                .Select(o => new MinutesWire(o.Id, o.Quoted, o.Done, o.Done - o.Quoted)),
        ];
    }

    private static async Task<CreatedAnswer<WorkWire>> Add(string unit, Body<WorkRequest> body, Bench bench, CancellationToken cancellation)
    {
        var sent = body.Value;
        var answer = await bench.Change(unit, body.Request, work =>
        {
            CheckOperation(sent.Operation, "/operation", work);
            if (sent.Position is { } position && !work.Family.Positions.ContainsKey(Place.Parse(position).Position))
                work.Complaints.AddUnknown("/position", FieldProblems.UnknownPosition, $"The family has no position {position}.", position, work.Family.Positions.Keys);
            work.StopIfWrong();
            var put = work.Session.Put(
                new WorkDone(work.Ids.Next(), unit, sent.Operation, sent.Position, sent.Minutes, sent.Person, sent.Bench, sent.Time ?? work.Now), 0);
            return Answer.Created($"/v1/units/{unit}/work", WorkWire.From(put));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Listing<MachiningWire, ListOf<MachiningWire>>> Out(string unit, Bench bench, IStore store, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        var rates = await store.Rates(cancellation);
        PageReader<Machining> pages = (after, limit, stop) => store.Page<Machining>(new ShopFilter(unit), after, limit, stop);
        return new(pages.Select(m => Shown(m, file, rates, bench.Time.GetUtcNow())), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<CreatedAnswer<MachiningWire>> Send(string unit, Body<MachiningRequest> body, Bench bench, CancellationToken cancellation)
    {
        var sent = body.Value;
        var answer = await bench.Change(unit, body.Request, work =>
        {
            var rates = work.Session.Rates();
            var component = work.Parts.Find(sent.Position, null, "", "position");
            if (sent.Operation is { } operation)
                CheckOperation(operation, "/operation", work);
            var price = rates.Amount(sent.Price, "/price", work.Complaints);
            work.StopIfWrong();
            var gate = sent.Operation is { } known ? work.Family.Operations[known].RemeasureGate : [];
            var job = new Machining(
                sent.Id ?? work.Ids.Next(), unit, sent.Position, component!.Id, component.Revision, sent.Operation, sent.Instruction, sent.At, work.Now, sent.Due, null,
                gate, price, sent.Person, 0);
            if (work.Session.Find<Machining>(job.Id) is not null)
                throw new DuplicateIdException("machining job", job.Id);
            var put = work.Session.Put(job, 0);
            return Answer.Created($"/v1/units/{unit}/machining", Shown(put, work.File, rates, work.Now), Etags.Of(Etags.Machining, put.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<ChangedAnswer<MachiningWire>> Change(
        string unit, string machining, HttpContext http, Body<MachiningChangeRequest> body, Bench bench, IStore store, CancellationToken cancellation)
    {
        var (expected, sent) = (Writes.ExpectedVersion(http, Etags.Machining), body.Value);
        var answer = await store.Write(body.Request, session =>
        {
            var file = session.File(unit) ?? throw Bench.Unknown();
            var now = session.Find<Machining>(machining) is { } job && job.Unit == unit ? job : throw new ProblemException(Problems.UnknownMachining, "The unit has no job of this id.");
            var (rates, complaints) = (session.Rates(), new Complaints());
            if (sent.Back < now.Out)
                complaints.Add("/back", FieldProblems.Contradiction, "It came back before it went out.");
            var price = sent.Price is null ? now.Price : rates.Amount(sent.Price, "/price", complaints);
            complaints.ThrowIfAny(Problems.InvalidContent);
            var put = session.Put(now with { Back = sent.Back ?? now.Back, Due = sent.Due ?? now.Due, Price = price }, expected);
            return Answer.Changed(Shown(put, file, rates, bench.Time.GetUtcNow()), Etags.Of(Etags.Machining, put.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static void CheckOperation(string operation, string pointer, BenchWork work)
    {
        if (!work.Family.Operations.ContainsKey(operation))
            work.Complaints.AddUnknown(pointer, FieldProblems.UnknownOperation, $"The family has no operation {operation}.", operation, work.Family.Operations.Keys);
    }

    private static MachiningWire Shown(Machining m, UnitFile file, Rates rates, DateTimeOffset now)
    {
        var readSince = file.Measurements.Where(x => x.Component == m.Component && m.Back is { } back && x.Taken.At >= back).Select(x => x.Characteristic).ToHashSet(StringComparer.Ordinal);
        return new MachiningWire(
            m.Id, m.Position, m.Component, m.Revision, m.Operation, m.Instruction, m.At, m.Out, m.Due, m.Back,
            m.Back is null && DateOnly.FromDateTime(now.UtcDateTime) > m.Due, MoneyWire.Of(m.Price, rates),
            [.. m.Remeasure.Where(r => !readSince.Contains(r)).Select(r => new Address(m.Position, r).ToString())], m.Person, m.Version);
    }
}
