using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Families;

/// <summary>Everything that is looked at when a family is taken up: whether it hangs together, and then whether its worked cases come out and prove its rules.</summary>
public static class LoadCheck
{
    /// <summary>Everything wrong or doubtful. What a case expects of a rule in code is left to whoever can run that.</summary>
    public static ImmutableArray<Diagnostic> Check(Family family)
    {
        var found = FamilyCheck.Check(family);
        return found.Any(d => d.IsError) ? found : [.. found, .. Cases(WithoutHooks(family))];
    }

    /// <summary>Each case is looked at once, for what comes out and for what it proves.</summary>
    private static ImmutableArray<Diagnostic> Cases(Family family)
    {
        var index = new FamilyIndex(family);
        var report = new FamilyReport(family.Version.Id);
        var fired = new HashSet<(string, string)>();
        foreach (var golden in family.Golden)
        {
            var answers = new CaseAnswers(golden, index, new NoHooks());
            GoldenCheck.Compare(golden, answers, report);
            fired.UnionWith(CaseCoverage.FiredBy(golden, answers));
        }

        CaseCoverage.Report(family, fired, report);
        return report.All;
    }

    private static Family WithoutHooks(Family family) => family.Hooks.IsEmpty ? family : family with
    {
        Golden = [.. family.Golden.Select(g => g with { Expected = [.. g.Expected.Where(e => !family.Hooks.Any(h => CaseAnswers.Speaks(h, e.Subject)))] })],
    };
}
