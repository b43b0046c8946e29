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
    /// <summary>One doubt for each rule that is not fired both ways.</summary>
    /// <param name="family">A family that <see cref="FamilyCheck"/> finds sound.</param>
    /// <param name="hooks">Its rules in code, or none.</param>
    public static ImmutableArray<Diagnostic> Check(Family family, IHooks hooks)
    {
        var index = new FamilyIndex(family);
        var fired = family.Golden.SelectMany(g => FiredBy(g, index, hooks)).ToHashSet();
        var report = new FamilyReport(family.Version.Id);
        foreach (var kind in family.Kinds)
        {
            foreach (var c in kind.Characteristics.Where(c => c.Service is not null))
                Untested($"kinds[{kind.Id}].characteristics[{c.Id}].service", "limit-untested", Rule(kind.Id, c.Id), Sides(c.Service!), fired, report);
        }

        foreach (var loop in family.Loops)
            Untested($"loops[{loop.Id}].window", "clearance-untested", loop.Id, Sides(loop.Window), fired, report);
        foreach (var rule in family.Pairings)
            Untested($"pairings[{rule.Id}]", "pairing-untested", rule.Id, ["holding", "broken"], fired, report);
        return report.All;
    }

    private static void Untested(string field, string code, string rule, string[] sides, HashSet<(string, string)> fired, FamilyReport report)
    {
        var missing = sides.Where(s => !fired.Contains((rule, s))).ToList();
        if (missing.Count > 0)
            report.Doubt(field, code, $"No worked case expects it {string.Join(" or ", missing)}: add one under golden.");
    }

    private static string[] Sides(Limits limits) =>
        [.. new[] { "inside", limits.Low is null ? null : "below", limits.High is null ? null : "above" }.OfType<string>()];

    private static IEnumerable<(string Rule, string Side)> FiredBy(GoldenCase golden, FamilyIndex index, IHooks hooks)
    {
        var expected = golden.Expected.Select(e => e.Subject).ToHashSet(StringComparer.Ordinal);
        var judgement = UnitJudge.Judge(new UnitView(golden.Snapshot, index), hooks);
        var limits = judgement.Parts.SelectMany(p => p.Verdicts).Concat(judgement.Clearances.Select(c => c.Verdict))
            .Where(v => expected.Contains(v.Subject))
            .Select(v => (RuleOf(v.Subject, index), SideOf(v)));
        var pairings = judgement.Pairings.Where(p => expected.Contains(p.Rule)).Select(p => (p.Rule, SideOf(p.Outcome)));
        return limits.Concat(pairings);
    }

    private static string SideOf(Compatibility outcome) => outcome switch
    {
        Compatibility.Compatible => "holding",
        Compatibility.NotAssessed => "",
        _ => "broken",
    };

    private static string SideOf(Verdict verdict) => verdict switch
    {
        { Outcome: Outcome.Conforming } => "inside",
        { Outcome: Outcome.Nonconforming, Value.Value: { } value, Against: { } against } => against.High is { } high && value.InSi > high.InSi ? "above" : "below",
        _ => "",
    };

    /// <summary>A limit belongs to the kind, wherever the part sits.</summary>
    private static string RuleOf(string subject, FamilyIndex index) => subject.Split('/', 2) is [var place, var characteristic] && index.KindAt(place.Split('#')[0]) is { } kind
        ? Rule(kind.Id, characteristic)
        : subject;

    private static string Rule(string kind, string characteristic) => $"{kind}/{characteristic}";
}
