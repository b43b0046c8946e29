using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>
/// What to look at next: for each thing that is not known, what its result would tell on average, for each minute that it takes. Without costs that is the
/// information in bits, with costs the saving of choosing better. Looks one step ahead.
/// </summary>
internal static class NextChecks
{
    private const double Telling = 1e-6;

    public static ImmutableArray<NextCheck> Of(CauseNetwork network, Weighing weighing, ImmutableArray<double> likely, DiagnosisQuestion question)
    {
        var known = question.Seen.Select(s => s.Clue.Id).ToHashSet(StringComparer.Ordinal);
        var asked = Asked(network, question.Seen);
        return
        [
            .. network.Tests.Where(t => t.Stage >= question.From).Concat(network.Signs.Select(s => s.Clue))
                .Where(clue => !known.Contains(clue.Id))
                .Select(clue => Weigh(clue, network, weighing, likely, asked, question))
                .Where(check => check.Bits > Telling || check.Saving > Telling)
                .GroupBy(check => (check.Clue.Kind, check.Clue.Look))
                .Select(look => look.MaxBy(check => check.PerMinute)!)
                .OrderByDescending(check => check.PerMinute)
                .Take(question.Checks),
        ];
    }

    // Nobody asked after a cause that brings nothing that is there; when nothing is there, all are asked after.
    private static ImmutableHashSet<int> Asked(CauseNetwork network, ImmutableArray<ClueSeen> seen)
    {
        var there = seen.Where(s => s.Present).SelectMany(s => s.Clue.Links).Select(l => l.Cause).ToImmutableHashSet();
        return there.IsEmpty ? [.. Enumerable.Range(0, network.Causes.Length)] : there;
    }

    private static NextCheck Weigh(
        Clue clue, CauseNetwork network, Weighing weighing, ImmutableArray<double> likely, ImmutableHashSet<int> asked, DiagnosisQuestion question)
    {
        var absent = weighing.WithAbsent(clue);
        var quiet = (1 - clue.Otherwise.Best) * absent.Z / weighing.All.Z;
        var (bits, saving) = (0.0, question.PlanSavings.GetValueOrDefault(clue.Look));
        for (var c = 0; c < likely.Length; c++)
        {
            var ifAbsent = AbsentYes(c, clue, network, absent);
            var ifShown = quiet < 1 ? Math.Clamp((likely[c] - quiet * ifAbsent) / (1 - quiet), 0, 1) : likely[c];
            if (asked.Contains(c))
                bits += Entropy(likely[c]) - quiet * Entropy(ifAbsent) - (1 - quiet) * Entropy(ifShown);
            if (question.Costs.TryGetValue(network.Causes[c].Id, out var cost))
                saving += cost.Expected(likely[c]) - quiet * cost.Expected(ifAbsent) - (1 - quiet) * cost.Expected(ifShown);
        }

        bits = Math.Max(bits, 0);
        var priced = question.Costs.Count > 0 || question.PlanSavings.Count > 0;
        var minutes = (double)Math.Max(clue.Minutes, 0.1m);
        return new NextCheck(clue, 1 - quiet, bits, priced ? Math.Max(saving, 0) : null, (priced ? Math.Max(saving, 0) : bits) / minutes, [Words(clue, 1 - quiet, bits)]);
    }

    // The changed tables carry (1 - p) for the causes of the clue, so their share of "yes" is taken from there.
    private static double AbsentYes(int cause, Clue clue, CauseNetwork network, Elimination absent)
    {
        var fails = clue.Links.Where(l => l.Cause == cause).Aggregate(1.0, (f, l) => f * (1 - l.Shown.Best));
        return Math.Clamp(network.Ranges[cause].Best * fails * absent.Slope(cause, 1) / absent.Z, 0, 1);
    }

    private static double Entropy(double p) => p is <= 0 or >= 1 ? 0 : -(p * Math.Log2(p)) - (1 - p) * Math.Log2(1 - p);

    private static Reason Words(Clue clue, double chance, double bits) => Because.Of(
        clue.Stage == TestStage.BeforeStripDown ? "next-check-before" : "next-check-apart", clue.Look,
        ("clue", clue.Name), ("minutes", clue.Minutes), ("percent", Math.Round(100 * chance)), ("bits", bits));
}
