using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Families;

/// <summary>
/// Which rules no worked case fires both ways: a limit never seen to pass and to fail at each end, a clearance likewise, a pairing never seen to hold and to
/// break. Only what a case expects counts: an outcome that nobody wrote down proves nothing.
/// </summary>
public static class CaseCoverage
{
    private static readonly string[] s_bothWays = ["holding", "broken"];

    /// <summary>One doubt for each rule that is not fired both ways.</summary>
    /// <param name="family">A family that <see cref="FamilyCheck"/> finds sound.</param>
    /// <param name="hooks">Its rules in code, or none.</param>
    public static ImmutableArray<Diagnostic> Check(Family family, IHooks hooks)
    {
        var index = new FamilyIndex(family);
        var report = new FamilyReport(family.Version.Id);
        Report(family, family.Golden.SelectMany(g => FiredBy(g, new CaseAnswers(g, index, hooks))).ToHashSet(), report);
        return report.All;
    }

    /// <summary>The rules that a case fires, each with the side on which it does.</summary>
    internal static IEnumerable<(string Rule, string Side)> FiredBy(GoldenCase golden, CaseAnswers answers) =>
        golden.Expected.SelectMany(e => answers.Of(e.Subject)).Select(a => (a.Rule, a.Side));

    /// <summary>Says which rules were not fired both ways.</summary>
    internal static void Report(Family family, HashSet<(string Rule, string Side)> fired, FamilyReport report)
    {
        foreach (var (field, rule, limits) in family.Kinds.SelectMany(k => OfKind(family, k)).Concat(family.Positions.SelectMany(OfPosition)))
            Untested(field, "limit-untested", rule, Sides(limits));
        foreach (var loop in family.Loops)
            Untested($"loops[{loop.Id}].window", "clearance-untested", loop.Id, Sides(loop.Window));
        foreach (var rule in family.Pairings)
            Untested($"pairings[{rule.Id}]", "pairing-untested", rule.Id, s_bothWays);

        void Untested(string field, string code, string rule, string[] sides)
        {
            var missing = sides.Where(s => !fired.Contains((rule, s))).ToList();
            if (missing.Count > 0)
                report.Doubt(field, code, $"No worked case expects it {string.Join(" or ", missing)}: add one under golden.");
        }
    }

    /// <summary>The kind's own limits, but for those that every position of the kind replaces.</summary>
    private static IEnumerable<(string Field, string Rule, Limits Limits)> OfKind(Family family, PartKind kind) => kind.Characteristics
        .Where(c => c.Service is not null && family.Positions.Any(p => p.Kind == kind.Id && !p.Overrides.Any(o => o.Characteristic == c.Id && o.Service is not null)))
        .Select(c => ($"kinds[{kind.Id}].characteristics[{c.Id}].service", CaseRules.OfKind(kind.Id, c.Id), c.Service!));

    private static IEnumerable<(string Field, string Rule, Limits Limits)> OfPosition(Position position) => position.Overrides
        .Where(o => o.Service is not null)
        .Select(o => ($"positions[{position.Id}].overrides[{o.Characteristic}].service", CaseRules.AtPosition(position.Id, o.Characteristic), o.Service!));

    private static string[] Sides(Limits limits) =>
        [.. new[] { "inside", limits.Low is null ? null : "below", limits.High is null ? null : "above" }.OfType<string>()];
}
