using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Measuring;

/// <summary>
/// All readings of one characteristic of one part: the plain ones at 20 °C, and the bounds. Their order does not matter.
/// </summary>
internal sealed class ReadingSet
{
    private ReadingSet(Scale scale, ImmutableArray<ReadValue> values, ImmutableArray<ReadBound> bounds)
    {
        Scale = scale;
        Values = values;
        Bounds = bounds;
    }

    public Scale Scale { get; }

    /// <summary>Plain readings, smallest first.</summary>
    public ImmutableArray<ReadValue> Values { get; }

    public ImmutableArray<ReadBound> Bounds { get; }

    /// <summary>How many readings were taken after their instrument's calibration had ended; they are not among the others when the policy blocks them.</summary>
    public int Overdue { get; private init; }

    /// <summary>How many readings lie outside the range of their instrument.</summary>
    public int OutsideRange { get; private init; }

    /// <summary>How many readings were taken while their instrument may have been wrong, as a later calibration found.</summary>
    public int InDoubt { get; private init; }

    public int Count => Values.Length + Bounds.Length;

    /// <summary>What was read of a placed part.</summary>
    public static ReadingSet Of(PlacedComponent placed, Characteristic characteristic, UnitView view)
    {
        var taken = view.MeasurementsOf(placed.Component, characteristic.Id).Select(m =>
        {
            var instrument = view.Instrument(m.Taken.Instrument);
            return new TakenWith(m, instrument, StudyOf(instrument, placed, characteristic, view.Family.Family.Version.Id));
        });
        return Of(taken, new Scale(characteristic.Dimension), MaterialOf(placed, view), view.Snapshot.Policy.Overdue);
    }

    /// <summary>Any measurements of one thing.</summary>
    public static ReadingSet Of(IEnumerable<TakenWith> taken, Scale scale, Material? material, OverdueRule overdueRule)
    {
        var all = taken.ToArray();
        var overdue = all.Where(IsOverdue).ToArray();
        var counted = overdueRule == OverdueRule.Block ? all.Except(overdue) : all;
        var readings = counted.SelectMany(t => t.Measurement.Readings.Select(r => (Taken: t, Reading: r))).ToArray();
        return new ReadingSet(
            scale,
            [
                .. readings.Where(r => scale.Of(r.Reading) is not null)
                    .Select(r => Value(r.Taken, r.Reading, scale, material))
                    .OrderBy(v => v.Point)
                    .ThenBy(v => v.InstrumentId, StringComparer.Ordinal),
            ],
            [.. readings.Where(r => scale.Dimension == Dimension.Length && !r.Reading.IsValue).Select(r => Bound(r.Taken, r.Reading, scale))])
        {
            Overdue = overdue.Sum(t => t.Measurement.Readings.Length),
            OutsideRange = readings.Count(r => r.Taken.Instrument is { } i && InstrumentStanding.IsOutside(r.Reading, i, scale)),
            InDoubt = readings.Count(r => r.Taken.Instrument is { } i && InstrumentStanding.IsInDoubt(i, r.Taken.Measurement.Taken.At)),
        };
    }

    private static bool IsOverdue(TakenWith taken) => taken.Instrument is { } i && InstrumentStanding.IsOverdue(i, taken.Measurement.Taken.At);

    /// <summary>A length is brought to 20 °C.</summary>
    private static ReadValue Value(TakenWith taken, Reading reading, Scale scale, Material? material)
    {
        var point = scale.Of(reading)!.Value;
        var warmth = scale.Dimension == Dimension.Length ? Warmth.Of(point, taken.Measurement.Taken, taken.Instrument, material) : default;
        var step = scale.Of(taken.Instrument?.Resolution) ?? scale.LastDigit(reading) ?? 0;
        return new ReadValue(
            point * (1 + warmth.Growth),
            reading.At,
            taken.Measurement.Taken.Instrument,
            step,
            InstrumentErrors.OfLimit(taken.Instrument, scale),
            warmth,
            taken.Study,
            InstrumentErrors.OfReference(taken.Instrument, scale));
    }

    private static ReadBound Bound(TakenWith taken, Reading reading, Scale scale) =>
        new(reading.Low?.Nanometres, reading.High?.Nanometres, reading.At, InstrumentErrors.OfLimit(taken.Instrument, scale));

    private static GaugeCapability? StudyOf(InstrumentState? instrument, PlacedComponent placed, Characteristic characteristic, string family) =>
        instrument?.Studies?.FirstOrDefault(s => s.Kind == placed.Component.Kind && s.Characteristic == characteristic.Id && (s.Family is null || s.Family == family));

    private static Material? MaterialOf(PlacedComponent placed, UnitView view)
    {
        var kind = view.Family.Kinds.GetValueOrDefault(placed.Component.Kind);
        return kind?.Material is { } id ? view.Family.Materials.GetValueOrDefault(id) : null;
    }
}

/// <summary>A measurement with what is known of its instrument.</summary>
/// <param name="Measurement">The measurement.</param>
/// <param name="Instrument">The instrument, or none.</param>
/// <param name="Study">What a gauge study found of it at this characteristic, or none.</param>
internal sealed record TakenWith(Measurement Measurement, InstrumentState? Instrument, GaugeCapability? Study);

/// <summary>A reading that only bounds the value.</summary>
/// <param name="Low">On the scale; none when there is none.</param>
/// <param name="High">On the scale; none when there is none.</param>
/// <param name="Place">The plane or angle, if said.</param>
/// <param name="LimitUncertainty">Standard uncertainty of the gauge, on the scale.</param>
internal sealed record ReadBound(double? Low, double? High, string? Place, double LimitUncertainty);
