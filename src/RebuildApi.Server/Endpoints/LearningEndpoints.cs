using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Diagnosis;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Diagnosis;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>What was tried and what was confirmed, and how it comes into the priors: only when a person accepts it.</summary>
public static class LearningEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapLearning(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("diagnosis");
        group.Make("/units/{unit}/tests", Try, "addTest", "Record a test", "Records a test of the family that was tried on the unit. Of several results of one test the newest counts.")
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId, Problems.RulesUnavailable)
            .Example("""{ "test": "linkage-off", "shown": false, "person": "Ada", "bench": "bench-1" }""");
        group.List<ListOf<TestDoneWire>>("/units/{unit}/tests", Tests, "listTests", "List the tests of a unit", "Every test that was tried, by id.").Fails(Problems.UnknownUnit);
        group.Make("/units/{unit}/causes", Confirm, "confirmCauses", "Say what it was",
                "Records what was found to lie behind the complaint. The newest statement counts, once the unit is handed over.")
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId, Problems.RulesUnavailable)
            .Example("""{ "causes": ["third-flanks-leaned"], "reason": "Flanks leaned; new gear cured it.", "person": "Ada", "bench": "bench-1" }""");
        group.List<ListOf<ConfirmedWire>>("/units/{unit}/causes", Confirmed, "listCauses", "What was it?", "Every statement, by id.").Fails(Problems.UnknownUnit);
        group.Read("/families/{family}/priors", Priors, "getPriors", "How common are the causes?",
                "Each cause as declared, as it stands, and as the closed units would have it, with the counts.").Fails(Problems.UnknownFamily);
        group.Make("/families/{family}/priors", Accept, "acceptPriors", "Accept the counts into the priors",
                "Counts the closed units into the declared priors: a prior worth n units and k confirmed of N become (prior n + k) / (n + N). Kept with who and why; the next diagnosis uses it.")
            .Needs(Scope.Office).Fails(Problems.UnknownFamily, Problems.InvalidContent)
            .Example("""{ "units": 12, "reason": "A year's comebacks looked through.", "person": "Ada" }""");
    }

    private static async Task<CreatedAnswer<TestDoneWire>> Try(string unit, Body<TestDoneRequest> body, Bench bench, CancellationToken cancellation)
    {
        var sent = body.Value;
        var answer = await bench.Change(unit, body.Request, work =>
        {
            SaidGearbox.CheckTest(sent.Test, "/test", work.Family, work.Complaints);
            work.StopIfWrong();
            var seen = new TestSeen(sent.Id ?? work.Ids.Next(), sent.Test, sent.Shown, new Taken(null, null, sent.Person, sent.Bench, sent.Time ?? work.Now, null));
            return Answer.Created($"/v1/units/{unit}/tests", TestDoneWire.From(work.Session.Put(new TestDone(unit, seen), null)));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Listing<TestDoneWire, ListOf<TestDoneWire>>> Tests(string unit, Bench bench, CancellationToken cancellation)
    {
        await bench.File(unit, cancellation);
        var tests = await bench.Store.All<TestDone>(new ShopFilter(unit), cancellation);
        return new(PagesOf.Whole([.. tests.Select(TestDoneWire.From)], t => t.Id), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<CreatedAnswer<ConfirmedWire>> Confirm(string unit, Body<ConfirmRequest> body, Bench bench, CancellationToken cancellation)
    {
        var sent = body.Value;
        var answer = await bench.Change(unit, body.Request, work =>
        {
            foreach (var (cause, i) in sent.Causes.Select((c, i) => (c, i)))
                SaidGearbox.CheckCause(cause, Pointer.Entry("/causes", i), work.Family, work.Complaints);
            work.StopIfWrong();
            var confirmed = new ConfirmedCauses(
                sent.Id ?? work.Ids.Next(), unit, work.Family.Family.Version.Id, [.. sent.Causes.Distinct()], sent.Reason, sent.Person, sent.Bench, work.Now);
            return Answer.Created($"/v1/units/{unit}/causes", ConfirmedWire.From(work.Session.Put(confirmed, null)));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Listing<ConfirmedWire, ListOf<ConfirmedWire>>> Confirmed(string unit, Bench bench, CancellationToken cancellation)
    {
        await bench.File(unit, cancellation);
        var statements = await bench.Store.All<ConfirmedCauses>(new ShopFilter(unit), cancellation);
        return new(PagesOf.Whole([.. statements.Select(ConfirmedWire.From)], c => c.Id), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<Found<PriorsWire>> Priors(string family, Asked asked, FamilyBook families, DiagnosisDesk desk, IStore store, CancellationToken cancellation)
    {
        var index = families.Require(family);
        var updates = await desk.Updates(family, cancellation);
        var statements = await store.All<ConfirmedCauses>(new ShopFilter(About: family), cancellation);
        var closed = new List<ConfirmedCauses>();
        foreach (var statement in Newest(statements))
        {
            if ((await store.Unit(statement.Unit, cancellation))?.Stage == ClosedUnits.Stage)
                closed.Add(statement);
        }

        var counts = ClosedUnits.Count(closed);
        var stands = desk.Network(index, updates.LastOrDefault());
        var proposed = DiagnosisDesk.Counted(index.Family, closed.Count, counts);
        return new(new PriorsWire(family, closed.Count, [.. updates.Select(PriorUpdateWire.From)],
            [.. index.Family.Causes.Select((c, i) => new PriorWire(
                c.Id, asked.Show.Words(c.Name), c.Prior, CausePrior.Of(c).Strength, LikelihoodWire.From(stands.Ranges[i]), stands.Priors[i].Strength,
                counts.GetValueOrDefault(c.Id), LikelihoodWire.From(proposed[i].Range()), proposed[i].Strength))]));
    }

    private static async Task<CreatedAnswer<PriorUpdateWire>> Accept(
        string family, Body<AcceptPriorsRequest> body, FamilyBook families, IStore store, TimeProvider time, CancellationToken cancellation)
    {
        families.Require(family);
        var sent = body.Value;
        var answer = await store.Write(body.Request, session =>
        {
            var closed = Newest(session.All<ConfirmedCauses>(about: family)).Where(s => session.Unit(s.Unit)?.Stage == ClosedUnits.Stage).ToList();
            var complaints = new Complaints();
            if (closed.Count != sent.Units)
                complaints.Add("/units", FieldProblems.Contradiction, $"{closed.Count} closed units have confirmed causes now: look at the counts again.", Invariant(sent.Units), [Invariant(closed.Count)]);
            complaints.ThrowIfAny(Problems.InvalidContent);
            var number = session.All<PriorUpdate>(about: family).Select(u => u.Number).DefaultIfEmpty().Max() + 1;
            var update = session.Put(new PriorUpdate(family, number, closed.Count, ClosedUnits.Count(closed), sent.Reason, sent.Person, time.GetUtcNow()), null);
            return Answer.Created($"/v1/families/{family}/priors", PriorUpdateWire.From(update));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static IEnumerable<ConfirmedCauses> Newest(ImmutableArray<ConfirmedCauses> statements) =>
        statements.GroupBy(s => s.Unit, StringComparer.Ordinal).Select(same => same.MaxBy(s => s.Time)!);

    private static string Invariant(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
