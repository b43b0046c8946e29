using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Planning;

/// <summary>What can be said of a way to fill a place, by itself.</summary>
/// <param name="Outcome">The worst of the verdicts of its parts.</param>
/// <param name="Verdicts">The verdicts.</param>
/// <param name="ChanceGood">Chance that it conforms in everything, 0..1.</param>
/// <param name="Conditions">What must be done before it holds, without cost.</param>
internal sealed record Standing(Outcome Outcome, ImmutableArray<Verdict> Verdicts, double ChanceGood, ImmutableArray<(string Code, string Subject, Reason Reason)> Conditions)
{
    /// <summary>Whether it is not good and not known to be: a used part that is not assessed or in doubt.</summary>
    public bool IsOpen { get; private init; }

    /// <summary>
    /// Weighs a fit. A new part stands on its drawing and is checked on arrival; a used part of which something is not known may go in only on the
    /// condition that it is read first, and at the chance that such a part proves bad (the shop's judgement). What was read brings its own chance.
    /// </summary>
    public static Standing Of(PlanPlace place, Fit fit, EstimateBook book, PlanRates rates)
    {
        var answers = fit.Parts.Select((p, i) => PartJudge.Judge(book.View.At(place.Position.Id).First(x => x.Placement.Index == place.Index + i), book)).ToArray();
        var verdicts = answers.SelectMany(a => a.Verdicts).ToImmutableArray();
        var outcome = Snapshots.Outcomes.Worst(answers.Select(a => a.Outcome));
        var isNew = fit.Parts.All(p => p.Component.Origin == Origin.New);
        var unknown = verdicts.Where(v => v.Outcome == Outcome.NotAssessed).Select(v => v.Subject)
            .Concat(answers.Where(a => a.Condition.Outcome is Outcome.NotAssessed or Outcome.Inconclusive).Select(a => a.Condition.Subject)).Distinct().ToImmutableArray();
        var read = verdicts.Aggregate(1.0, (chance, v) => chance * (v.Outcome == Outcome.NotAssessed ? 1 : v.Probability ?? 1));
        return new Standing(outcome, verdicts, isNew || unknown.IsEmpty ? read : read * (1 - rates.OpenPartRisk), [.. ConditionsOf(place, fit, isNew, unknown, verdicts)])
        {
            IsOpen = !isNew && (outcome is Outcome.NotAssessed or Outcome.Inconclusive),
        };
    }

    private static IEnumerable<(string, string, Reason)> ConditionsOf(PlanPlace place, Fit fit, bool isNew, ImmutableArray<string> unknown, ImmutableArray<Verdict> verdicts)
    {
        foreach (var work in fit.Work.Where(w => !w.RemeasureGate.IsEmpty || w.Change is not null))
            yield return ("measure-again", place.Subject, Because.Of("plan-measure-again", place.Subject, ("operation", work.Operation), ("what", string.Join(", ", work.RemeasureGate))));
        if (isNew && !unknown.IsEmpty)
            yield return ("check-on-arrival", place.Subject, Because.Of("plan-check-on-arrival", place.Subject, ("what", string.Join(", ", unknown))));
        if (isNew)
            yield break;
        foreach (var subject in unknown)
            yield return subject == place.Subject
                ? ("look-first", subject, Because.Of("plan-look-first", subject))
                : ("measure-first", subject, Because.Of("plan-measure-first", subject));
        foreach (var doubt in verdicts.Where(v => v.Outcome == Outcome.Inconclusive))
            yield return ("measure-first", doubt.Subject, Because.Of("plan-doubtful", doubt.Subject, ("percent", Math.Round(100 * (doubt.Probability ?? 0), 1))));
    }
}
