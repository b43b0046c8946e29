using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>What must be known and settled in the judgement of a unit.</summary>
public static class VerdictRequirements
{
    private const string ReadIt = "Look at it and read it; GET the verdicts of the unit lists what is missing.";

    /// <summary>Every part, clearance and pairing is assessed.</summary>
    public static readonly Requirement NothingNotAssessed = new("nothing-not-assessed", "Nothing is not assessed", Leave.Exception, f =>
    {
        var (answers, family) = (f.Judged.Answers, f.Judged.Family);
        return
        [
            .. answers.Parts.Where(p => p.Outcome == Outcome.NotAssessed).Select(p => NotAssessed(Subjects.Of(p.Position, p.Index), SafetySubjects.IsSafety(p, family))),
            .. answers.Clearances.Where(c => c.Verdict.Outcome == Outcome.NotAssessed)
                .Select(c => NotAssessed(c.Verdict.Subject, SafetySubjects.IsSafety(c.Verdict.Subject, family))),
            .. answers.Pairings.Where(p => p.Outcome == Compatibility.NotAssessed).Select(p => NotAssessed(p.Rule, SafetySubjects.IsSafety(p, family))),
        ];
    });

    /// <summary>Everything that does not surely conform has a decision beside it.</summary>
    public static readonly Requirement NothingOpen = new("nothing-open", "Whatever does not conform is decided", Leave.Exception, f =>
        Undecided(f).Select(b => new Unmet(
            b.Subject, f.Judged.Family.Say(b.Reason), "Mend it and read it again, or sign a decision on it: POST to /decisions of the unit.", b.Reason.Code == "block-safety")));

    /// <summary>Blocks that nobody has decided on. What is not known at all can't be decided; it is another requirement's matter.</summary>
    internal static IEnumerable<Block> Undecided(GateFacts facts)
    {
        var decisions = new DecisionsBeside(facts.File.Decisions, facts.Judged.View.InputsSha256);
        return facts.Judged.Answers.Blocks
            .Where(b => b.Reason.Code is not ("block-not-assessed" or "block-no-part" or "block-clearance-open" or "block-pairing-open"))
            .Where(b => decisions.On(b.Subject) is null);
    }

    private static Unmet NotAssessed(string subject, bool isSafety) =>
        new(subject, $"{subject} is not assessed.", ReadIt, isSafety);
}
