using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Conformity;

/// <summary>What rests on an instrument that turned out wrong: its readings in a unit, and each verdict that changes without them.</summary>
/// <param name="Measurements">The measurements it took.</param>
/// <param name="Changes">The verdicts that change.</param>
public sealed record Recall(ImmutableArray<Measurement> Measurements, ImmutableArray<RecalledVerdict> Changes)
{
    /// <summary>Looks for everything an instrument read since a day.</summary>
    /// <param name="view">The unit.</param>
    /// <param name="instrument">Id of the instrument.</param>
    /// <param name="since">The first moment that its readings are in doubt.</param>
    public static Recall Of(UnitView view, string instrument, DateTimeOffset since)
    {
        var doubtful = view.Snapshot.Measurements.Where(m => m.Taken.Instrument == instrument && m.Taken.At >= since).ToImmutableArray();
        var without = new UnitView(view.Snapshot with { Measurements = [.. view.Snapshot.Measurements.Except(doubtful)] }, view.Family);
        var before = Verdicts(view);
        var after = Verdicts(without).ToDictionary(v => v.Subject, StringComparer.Ordinal);
        return new Recall(
            doubtful,
            [.. before.Where(v => after[v.Subject].Outcome != v.Outcome).Select(v => new RecalledVerdict(v, after[v.Subject]))]);
    }

    private static ImmutableArray<Verdict> Verdicts(UnitView view)
    {
        var book = new EstimateBook(view);
        return
        [
            .. from position in view.Family.Family.Positions
               from placed in view.At(position.Id)
               from characteristic in view.Family.Kinds[position.Kind].Characteristics
               let verdict = CharacteristicJudge.Judge(placed, characteristic, book)
               where verdict is not null
               select verdict,
        ];
    }
}

/// <summary>A verdict that does not stand without an instrument's readings.</summary>
/// <param name="With">As it was.</param>
/// <param name="Without">As it is without them.</param>
public sealed record RecalledVerdict(Verdict With, Verdict Without);
