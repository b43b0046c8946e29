using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>
/// Records decisions together with the judgement that they were made against, so that years later it can be seen what was known and said.
/// The unit is judged before the change begins, since judging is too slow for the one writer; should someone write in between, it is judged again.
/// </summary>
public sealed class DecisionDesk(Bench bench, Judging judging)
{
    private const int Tries = 5;

    /// <summary>Records one decision.</summary>
    public async Task<StoredAnswer> Decide(string unit, Body<DecisionRequest> body, CancellationToken cancellation)
    {
        for (var i = 1; ; i++)
        {
            var judged = judging.Judge(await bench.File(unit, cancellation));
            var outcome = OutcomeOf(body.Value.Subject, judged);
            try
            {
                return await bench.Change(unit, body.Request, work => Keep(work, body.Value, judged, outcome), cancellation);
            }
            catch (VersionConflictException) when (i < Tries)
            {
                // Someone wrote between judging and deciding: judge again what now stands.
            }
        }
    }

    private static StoredAnswer Keep(BenchWork work, DecisionRequest sent, Judged judged, string outcome)
    {
        judged.RequireStill(work.File);
        var decision = new Decision(
            sent.Id ?? work.Ids.Next(), sent.Subject, sent.Choice, sent.Reason, sent.Person, sent.Bench, work.Now, outcome, judged.View.InputsSha256, sent.Supersedes);
        work.Session.Add(work.Unit, decision);
        work.Session.Keep(judged, "decision");
        return Answer.Created($"/v1/units/{work.Unit}/decisions", DecisionWire.From(decision), Etags.Of(Etags.Unit, work.Version));
    }

    private static string OutcomeOf(string subject, Judged judged)
    {
        var outcomes = Outcomes(judged).DistinctBy(o => o.Subject).ToDictionary(o => o.Subject, o => o.Outcome, StringComparer.Ordinal);
        if (outcomes.TryGetValue(subject, out var outcome))
            return outcome;
        var complaints = new Complaints();
        complaints.AddUnknown("/subject", FieldProblems.UnknownSubject, $"No answer about this unit has the subject {subject}.", subject, outcomes.Keys);
        complaints.ThrowIfAny(Problems.InvalidContent);
        return "";
    }

    private static IEnumerable<(string Subject, string Outcome)> Outcomes(Judged judged)
    {
        foreach (var part in judged.Answers.Parts)
        {
            yield return (Engine.Snapshots.Subjects.Of(part.Position, part.Index), Kebab.Of(part.Outcome));
            foreach (var verdict in part.Verdicts)
                yield return (verdict.Subject, Kebab.Of(verdict.Outcome));
        }

        foreach (var clearance in judged.Answers.Clearances)
            yield return (clearance.Verdict.Subject, Kebab.Of(clearance.Verdict.Outcome));
        foreach (var pairing in judged.Answers.Pairings)
            yield return (pairing.Rule, Kebab.Of(pairing.Outcome));
    }
}
