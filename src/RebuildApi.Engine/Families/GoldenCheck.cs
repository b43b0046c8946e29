using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Families;

/// <summary>Runs a family's own worked cases through the engine: a limit mistyped, or a rule put to the wrong part, shows here.</summary>
public static class GoldenCheck
{
    /// <summary>Every expectation that does not come out.</summary>
    /// <param name="family">A family that <see cref="FamilyCheck"/> finds sound.</param>
    /// <param name="hooks">Its rules in code, or none.</param>
    /// <returns>One diagnostic for each, with the code <c>golden-differs</c> or <c>golden-subject-unknown</c>; empty when all come out.</returns>
    public static ImmutableArray<Diagnostic> Run(Family family, IHooks hooks)
    {
        var index = new FamilyIndex(family);
        var report = new FamilyReport(family.Version.Id);
        foreach (var golden in family.Golden)
            Compare(golden, Outcomes(UnitJudge.Judge(new UnitView(golden.Snapshot, index), hooks)), report);
        return report.All;
    }

    private static void Compare(GoldenCase golden, ILookup<string, string> outcomes, FamilyReport report)
    {
        foreach (var expected in golden.Expected)
        {
            var field = $"golden[{golden.Name}].expected[{expected.Subject}]";
            if (!outcomes.Contains(expected.Subject))
                report.Error(field, "golden-subject-unknown", $"Nothing is said of '{expected.Subject}'.");
            foreach (var outcome in outcomes[expected.Subject].Where(o => o != expected.Outcome))
                report.Error(field, "golden-differs", $"'{expected.Subject}' comes out {outcome}, not {expected.Outcome}.");
        }
    }

    private static ILookup<string, string> Outcomes(Judgement judgement) => judgement.Parts.SelectMany(p => p.Verdicts)
        .Concat(judgement.Clearances.Select(c => c.Verdict))
        .Select(v => (v.Subject, Word: Kebab(v.Outcome.ToString())))
        .Concat(judgement.Pairings.Select(p => (Subject: p.Rule, Word: Kebab(p.Outcome.ToString()))))
        .ToLookup(x => x.Subject, x => x.Word, StringComparer.Ordinal);

    /// <summary>The outcome as the contract writes it: <c>not-assessed</c>.</summary>
    private static string Kebab(string name) => System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(name);
}
