using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>
/// What may lie behind a complaint? Exact: every cause may be there or not, several at once; clues are noisy-ORs of their causes. Pure.
/// </summary>
public static class Diagnoser
{
    // A clue that moves the odds by less than this hundredth says nothing worth a line.
    private const double Weightless = 0.01;
    private const double Certain = 1e-12;

    /// <summary>Ranks the causes and names the next checks.</summary>
    /// <exception cref="TooWideException">So many clues are there at once that no exact answer can be had.</exception>
    public static DiagnosisAnswer Diagnose(CauseNetwork network, DiagnosisQuestion question)
    {
        var weighing = new Weighing(network, question.Seen);
        ImmutableArray<double> likely = [.. network.Causes.Select((_, c) => weighing.Yes(weighing.All, c))];
        var without = question.Seen.Select((_, s) => weighing.Without(s)).ToArray();
        var judged = weighing.Judged(weighing.All).ToArray();
        ImmutableArray<RankedCause> causes =
        [
            .. network.Causes.Select((_, c) => (Bears: Bears(c, question.Seen), Cause: Rank(c, network, weighing, likely[c], [.. without.Select(run => weighing.Yes(run, c))], judged)))
                .OrderByDescending(c => c.Bears).ThenByDescending(c => c.Cause.Probability).Select(c => c.Cause),
        ];
        return new DiagnosisAnswer(causes, question.Seen, Unexplained(weighing), NextChecks.Of(network, weighing, likely, question), Short(causes, question.Seen));
    }

    // A common cause that has nothing to do with anything that is there does not stand before a rarer one that has.
    private static bool Bears(int cause, ImmutableArray<ClueSeen> seen) => seen.Any(s => s.Present && s.Clue.Links.Any(l => l.Cause == cause));

    private static RankedCause Rank(int cause, CauseNetwork network, Weighing weighing, double likely, ImmutableArray<double> without, Judgeable[] judged)
    {
        var (low, high, hangsOn) = Sensitivity.Of(cause, likely, weighing, judged);
        ImmutableArray<ClueWeight> weights =
        [
            .. weighing.Seen.Select((s, i) => new ClueWeight(s.Clue, s.Present, LogOdds(likely) - LogOdds(without[i])))
                .Where(w => Math.Abs(w.LogOdds) >= Weightless)
                .OrderByDescending(w => Math.Abs(w.LogOdds)),
        ];
        return new RankedCause(
            network.Causes[cause], network.Priors[cause], network.Ranges[cause], likely, low, high,
            hangsOn is { } h ? new HangsOn(h.Clue is { } s ? weighing.Seen[s].Clue : null, h.Cause is { } c ? network.Causes[c].Id : null, h.Range) : null,
            weights,
            [.. weights.Select(w => Words(w, network.Causes[cause].Id))]);
    }

    private static double LogOdds(double probability)
    {
        var p = Math.Clamp(probability, Certain, 1 - Certain);
        return Math.Log(p / (1 - p));
    }

    private static Reason Words(ClueWeight weight, string cause)
    {
        var (code, factor) = weight.LogOdds > 0 ? ("clue-for", weight.OddsFactor) : ("clue-against", 1 / weight.OddsFactor);
        return Because.Of(weight.Present ? code : code + "-by-absence", cause, ("clue", weight.Clue.Name), ("factor", Math.Round(factor, 1)));
    }

    private static ImmutableArray<Unexplained> Unexplained(Weighing weighing) =>
    [
        .. weighing.Seen.Where(s => s.Clue.Kind == ClueKind.Symptom && s.Present)
            .Select(s => new Unexplained(s.Clue, Math.Clamp(weighing.WithNone(s.Clue.Links.Select(l => l.Cause)).Z / weighing.All.Z, 0, 1))),
    ];

    private static ImmutableArray<Reason> Short(ImmutableArray<RankedCause> causes, ImmutableArray<ClueSeen> seen)
    {
        if (seen.IsEmpty)
            return [Because.Of("diagnosis-nothing-known", "diagnosis")];
        return [.. causes.Take(3).Select(c => Because.Of("cause-likely", c.Cause.Id, ("cause", c.Cause.Name.In("en")), ("percent", Percent(c.Probability)), ("low", Percent(c.Low)), ("high", Percent(c.High))))];
    }

    private static double Percent(double probability) => Math.Round(100 * probability, probability is < 0.01 or > 0.99 ? 1 : 0);
}
