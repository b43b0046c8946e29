using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;

namespace RebuildApi.Engine.Clearances;

/// <summary>The simple slips that a clearance offers, each with what undoing it does to the residual (trial − parts).</summary>
internal static class MixUpCauses
{
    public static IEnumerable<(MixUpCause Cause, Length ChangeOfResidual)> Of(ClearanceLoop loop, TrialAssembly trial, EstimateBook book) =>
        loop.Terms.Where(t => t.Of is OfPart).SelectMany(t => OfPart(t, book))
            .Concat(OfTrial(trial))
            .Concat(loop.Terms.Where(t => t.Of is OfSeries).SelectMany(t => OfPieces(t, trial, book)));

    private static IEnumerable<(MixUpCause Cause, Length ChangeOfResidual)> OfPart(Term term, EstimateBook book)
    {
        var at = ((OfPart)term.Of).At;
        if (book.View.FirstAt(at.Position) is not { } placed || book.View.Family.CharacteristicAt(at) is not { } characteristic)
            yield break;
        var readings = book.View.MeasurementsOf(placed.Component, at.Characteristic).SelectMany(m => m.Readings).ToArray();
        var weight = characteristic.Report == Statistic.Mean ? readings.Length : 1;
        foreach (var reading in readings)
        {
            foreach (var (slip, meant, change) in ReadingSlips.Of(reading))
                yield return (Cause(slip, at.ToString(), reading.AsSent, meant), -Share(term, change, weight));
        }

        foreach (var other in OtherParts(at, placed.Component, book))
            yield return (Cause(Slip.OtherPart, at.ToString(), placed.Component.Id, other.Id), -Ratio.Times(term, other.Difference));
    }

    private static IEnumerable<(string Id, Length Difference)> OtherParts(Address at, Component placed, EstimateBook book)
    {
        if (Mean(placed, at.Characteristic, book) is not { } own)
            yield break;
        foreach (var other in book.View.Snapshot.Components.Where(c => c.Kind == placed.Kind && c.Id != placed.Id))
        {
            if (Mean(other, at.Characteristic, book) is { } value && value != own)
                yield return (other.Id, value - own);
        }
    }

    private static IEnumerable<(MixUpCause Cause, Length ChangeOfResidual)> OfTrial(TrialAssembly trial) =>
        from reading in trial.Gap
        from slip in ReadingSlips.Of(reading)
        where slip.Slip == Slip.TransposedDigits
        select (Cause(slip.Slip, trial.Id, reading.AsSent, slip.Meant), Ratio.Sum([(1, trial.Gap.Length, slip.Change)]));

    /// <summary>With another piece in the trial than was written down, the gap without it is another: −coefficient × difference.</summary>
    private static IEnumerable<(MixUpCause Cause, Length ChangeOfResidual)> OfPieces(Term term, TrialAssembly trial, EstimateBook book) =>
        from piece in trial.Pieces.Where(p => p.Position == ((OfSeries)term.Of).Position)
        from other in book.View.Family.Series[piece.Series].Members
        where other.Id != piece.Member
        select (Cause(Slip.OtherPiece, piece.Position, piece.Member, other.Id), -Ratio.Times(term, other.Thickness - piece.Thickness));

    private static MixUpCause Cause(Slip slip, string at, string written, string meant) => new(slip, at, written, meant, Length.Zero);

    private static Length Share(Term term, Length change, int readings) =>
        Ratio.Sum([(term.Numerator, checked(term.Denominator * readings), change)]);

    private static Length? Mean(Component component, string characteristic, EstimateBook book)
    {
        var values = book.View.MeasurementsOf(component, characteristic).SelectMany(m => m.Readings).Where(r => r is { IsValue: true, Low: not null }).ToArray();
        return values.Length == 0 ? null : Ratio.Sum(values.Select(r => (1, values.Length, r.Low!.Value)));
    }
}
