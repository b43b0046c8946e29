using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>What a person must have tried on the finished gearbox and signed for. None of it is ever left out.</summary>
public static class SignOffRequirements
{
    /// <summary>Only one rail moves at a time.</summary>
    public static readonly Requirement Interlock = new("interlock", "The interlock is tried and signed", Leave.Never, f => Signed(f, SignedChecks.Interlock,
        "Move each rail in turn: every other one must be locked."));

    /// <summary>It turns and shifts as it should.</summary>
    public static readonly Requirement FunctionTest = new("function-test", "The function test is signed", Leave.Never, f => Signed(f, SignedChecks.FunctionTest,
        "Turn it in every gear and neutral, both ways, and look for leaks."));

    /// <summary>Whatever can hurt a person and does not surely conform is signed for by name.</summary>
    public static readonly Requirement SafetySigned = new("safety-signed", "What can hurt a person is signed for", Leave.Never, f =>
    {
        var decisions = new DecisionsBeside(f.File.Decisions, f.Judged.View.InputsSha256);
        return f.Judged.Answers.Blocks.Where(b => b.Reason.Code == "block-safety" && decisions.On(b.Subject) is not { SameInputs: true }).Select(b => new Unmet(
            b.Subject, $"{b.Subject} can hurt a person, does not surely conform, and nobody has signed for it as it stands now.",
            "Mend it and read it again, or have a named person decide: POST to /decisions of the unit.", true));
    });

    /// <summary>What is missing for a check to be signed for: on the gearbox as it is built now.</summary>
    internal static IEnumerable<Unmet> Signed(GateFacts facts, string check, string how, bool isSafety = true)
    {
        var fix = $"{how} POST to /sign-offs of the unit with check {check}.";
        var since = facts.Since(UnitStages.Assembly);
        var newest = facts.SignOffs.LastOrDefault(s => s.Check == check);
        return newest is null || newest.Time < since ? [new(check, $"Nobody has signed for {check} since it went together.", fix, isSafety)]
            : !newest.Passed ? [new(check, $"{check} failed when {newest.Person} tried it.", "Mend what was wrong. " + fix, isSafety)]
            : newest.BuildSha256 != Build.Sha256(facts.File) ? [new(check, $"Something was fitted or taken out after {newest.Person} signed for {check}.", fix, isSafety)]
            : [];
    }
}
