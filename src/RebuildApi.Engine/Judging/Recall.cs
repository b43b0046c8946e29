using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Judging;

/// <summary>What rests on an instrument that turned out wrong: what it read in a unit, and each verdict that changes without it.</summary>
/// <param name="Measurements">The measurements it took.</param>
/// <param name="Trials">The trial assemblies that were read with it.</param>
/// <param name="Changes">The verdicts on characteristics, parts and clearances, and the pairings, that change.</param>
public sealed record Recall(ImmutableArray<Measurement> Measurements, ImmutableArray<TrialAssembly> Trials, ImmutableArray<RecalledVerdict> Changes)
{
    /// <summary>Looks for everything an instrument read from one moment to another, both included.</summary>
    /// <param name="view">The unit.</param>
    /// <param name="instrument">Id of the instrument.</param>
    /// <param name="since">The first moment that its readings are in doubt.</param>
    /// <param name="until">The last moment; none for all that follows.</param>
    /// <param name="judge">The judge that made the verdicts.</param>
    public static Recall Of(UnitView view, string instrument, DateTimeOffset since, DateTimeOffset? until, Func<UnitView, Judgement> judge)
    {
        var snapshot = view.Snapshot;
        var measurements = snapshot.Measurements.Where(m => IsDoubtful(m.Taken)).ToImmutableArray();
        var trials = snapshot.Trials.Where(t => IsDoubtful(t.Taken)).ToImmutableArray();
        if (measurements.IsEmpty && trials.IsEmpty)
            return new Recall([], [], []);
        var without = snapshot with { Measurements = [.. snapshot.Measurements.Except(measurements)], Trials = [.. snapshot.Trials.Except(trials)] };
        var after = Outcomes(judge(new UnitView(without, view.Family))).ToDictionary(o => o.Subject, o => o.Outcome, StringComparer.Ordinal);
        var changes = Outcomes(judge(view))
            .Where(o => after.TryGetValue(o.Subject, out var then) && then != o.Outcome)
            .Select(o => new RecalledVerdict(o.Subject, o.Outcome, after[o.Subject]));
        return new Recall(measurements, trials, [.. changes]);

        bool IsDoubtful(Taken taken) => taken.Instrument == instrument && taken.At >= since && !(taken.At > until);
    }

    /// <summary>Every outcome by its subject.</summary>
    private static IEnumerable<(string Subject, string Outcome)> Outcomes(Judgement judgement) =>
        judgement.Parts.SelectMany(p => p.Verdicts.Select(v => (v.Subject, Word(v.Outcome))).Prepend((Subjects.Of(p.Position, p.Index), Word(p.Outcome))))
            .Concat(judgement.Clearances.Select(c => (c.Verdict.Subject, Word(c.Verdict.Outcome))))
            .Concat(judgement.Pairings.Select(p => (p.Rule, Word(p.Outcome))))
            .DistinctBy(o => o.Item1);

    private static string Word<T>(T outcome)
        where T : struct, Enum => System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(outcome.ToString());
}

/// <summary>An answer that does not stand without what an instrument read.</summary>
/// <param name="Subject">A characteristic, a part by its position, a clearance or a pairing.</param>
/// <param name="With">Its outcome as it was, as a word.</param>
/// <param name="Without">Its outcome without them.</param>
public sealed record RecalledVerdict(string Subject, string With, string Without);
