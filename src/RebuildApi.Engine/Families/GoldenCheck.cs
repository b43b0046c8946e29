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
            Compare(golden, new CaseAnswers(golden, index, hooks), report);
        return report.All;
    }

    /// <summary>Compares one case with what comes out.</summary>
    internal static void Compare(GoldenCase golden, CaseAnswers answers, FamilyReport report)
    {
        foreach (var expected in golden.Expected)
        {
            var field = $"golden[{golden.Name}].expected[{expected.Subject}]";
            var found = answers.Of(expected.Subject);
            if (found.IsEmpty)
                report.Error(field, "golden-subject-unknown", $"Nothing is said of '{expected.Subject}'.");
            foreach (var other in found.Where(a => a.Outcome != expected.Outcome))
                report.Error(field, "golden-differs", $"'{expected.Subject}' comes out {other.Outcome}, not {expected.Outcome}.");
        }
    }
}
