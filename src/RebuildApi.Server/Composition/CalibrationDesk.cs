using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>Records what a calibration found, and which readings of the past are in doubt because of it.</summary>
public sealed class CalibrationDesk(IIdSource ids, TimeProvider time)
{
    /// <summary>Records one calibration inside a change.</summary>
    /// <returns>The calibration as it is kept.</returns>
    public Calibration Keep(IWriteSession session, Instrument instrument, CalibrationRequest sent)
    {
        var complaints = new Complaints();
        if (sent.Time > time.GetUtcNow().AddDays(1))
            complaints.Add("/time", FieldProblems.OutOfRange, "The time lies in the future.", sent.Time?.ToString("O", CultureInfo.InvariantCulture));
        var points = sent.Points.Select((p, i) => Point(p, instrument.State.Resolution.Kind, Pointer.Entry("/points", i), complaints)).ToArray();
        complaints.ThrowIfAny(Problems.InvalidContent);
        var limit = instrument.State.LimitOfError;
        bool? within = limit is null ? null : points.All(p => Math.Abs(p!.Error.InSi) <= limit.InSi);
        var calibration = new Calibration(
            sent.Id ?? ids.Next(), instrument.State.Id, (sent.Time ?? time.GetUtcNow()).ToUniversalTime(), [.. points.Select(p => p!)], limit, within, sent.Certificate, sent.Person);
        session.Add(calibration);
        session.Put(
            instrument with
            {
                State = instrument.State with
                {
                    CalibrationDue = sent.Due ?? instrument.State.CalibrationDue,
                    InDoubt = DoubtfulTimes(session.Calibrations(instrument.State.Id)),
                },
            },
            null);
        return calibration;
    }

    /// <summary>
    /// The times whose readings are in doubt: before each calibration that found an error beyond the limit, back to the last one before it that
    /// found none.
    /// </summary>
    public static ImmutableArray<DoubtfulTime> DoubtfulTimes(ImmutableArray<Calibration> calibrations) =>
    [
        .. calibrations.Where(c => c.IsWithinLimit == false)
            .Select(wrong => new DoubtfulTime(
                calibrations.Where(c => c.IsWithinLimit == true && c.At < wrong.At).Select(c => (DateTimeOffset?)c.At).Max(), wrong.At))
            .GroupBy(t => t.After)
            .Select(g => g.MaxBy(t => t.UpTo)!)
            .OrderBy(t => t.UpTo),
    ];

    private static CalibrationPoint? Point(CalibrationPointRequest sent, Dimension dimension, string pointer, Complaints complaints)
    {
        var nominal = Points.Maybe(sent.Nominal, dimension, pointer + "/nominal", complaints);
        var read = Points.Maybe(sent.Read, dimension, pointer + "/read", complaints);
        return (nominal, read) switch
        {
            (Exact n, Exact r) => new CalibrationPoint(n, new Exact(r.Value - n.Value)),
            (Real n, Real r) => new CalibrationPoint(n, new Real(r.Si - n.Si, dimension)),
            _ => null,
        };
    }
}
