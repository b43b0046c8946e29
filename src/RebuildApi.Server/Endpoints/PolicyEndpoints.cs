using System.Collections.Immutable;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>The shop's own rules, which every judgement is made under.</summary>
public static class PolicyEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapPolicy(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("policy");
        group.Read("/policy", Get, "getPolicy", "Which rules does the shop judge by?", "The edition in force; its ETag is what a change must name.").Tagged().InUnits();
        group.Replace("/policy", Put, "putPolicy", "Put another policy in force",
                "The whole policy, signed with a reason. Every answer from now on is made under it and names its edition; judgements that someone relied on keep theirs.")
            .Needs(Scope.Office).InUnits().Fails(Problems.InvalidContent)
            .Example("""
                { "person": "Ada", "reason": "Bores of the third gear run loose sooner than the book says.", "decision": "guarded", "probability": 0.95, "overdue": "block",
                  "rules": [{ "criticality": "safety-critical", "decision": "guarded", "probability": 0.99 }],
                  "limits": [{ "family": "brackenmere-4", "subject": "third-gear/bore", "high": { "value": 1.8785, "unit": "in" }, "source": "Our own comebacks" }] }
                """);
        group.List<ListOf<PolicyWire>>("/policy/editions", Editions, "listPolicyEditions", "List the editions of the policy", "Every edition that was signed, oldest first.");
    }

    private static async Task<Found<PolicyWire>> Get(Asked asked, IStore store, CancellationToken cancellation)
    {
        var stands = await store.Policy(cancellation);
        return new(PolicyWire.From(stands, asked.Show), Etags.Of(Etags.Policy, stands.Number));
    }

    private static async Task<ChangedAnswer<PolicyWire>> Put(
        HttpContext http, Body<PolicyRequest> body, Asked asked, IStore store, PolicyIntake intake, TimeProvider time, CancellationToken cancellation)
    {
        var expected = Writes.ExpectedVersion(http, Etags.Policy);
        var complaints = new Complaints();
        var policy = intake.Read(body.Value, complaints);
        var exceptions = PolicyIntake.Exceptions(body.Value, complaints);
        complaints.ThrowIfAny(Problems.InvalidContent);
        var answer = await store.Write(body.Request, session =>
        {
            var now = session.Policy();
            if (expected is { } seen && seen != now.Number)
                throw Conflict(now, seen, asked.Show);
            var put = session.Put(new PolicyEdition(0, policy, body.Value.Person, body.Value.Reason, time.GetUtcNow()) { MayExcept = exceptions }, expected);
            return Answer.Changed(PolicyWire.From(put, asked.Show), Etags.Of(Etags.Policy, put.Number));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static Listing<PolicyWire, ListOf<PolicyWire>> Editions(Asked asked, IStore store)
    {
        PageReader<PolicyEdition> pages = store.Policies;
        return new(pages.Select(p => PolicyWire.From(p, asked.Show)), (items, next, asOf) => new(items, next, asOf));
    }

    private static ProblemException Conflict(PolicyEdition now, long seen, Display show) => new(Problems.VersionConflict, $"The policy is at edition {now.Number}, not {seen}.")
    {
        Extras = new Dictionary<string, object> { ["currentVersion"] = now.Number, ["yourVersion"] = seen, ["current"] = PolicyWire.From(now, show) }.ToExtras(),
        Headers = ImmutableSortedDictionary<string, string>.Empty.Add("ETag", Etags.Of(Etags.Policy, now.Number)),
    };
}
