using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Measuring;

/// <summary>
/// All readings of one characteristic of one part: the plain ones at 20 °C, and the bounds. Their order does not matter.
/// </summary>
internal sealed class ReadingSet
{
    private const double ReferenceTemperature = 293.15;

    private ReadingSet(Scale scale, ImmutableArray<ReadValue> values, ImmutableArray<ReadBound> bounds, double expansionHalfWidth, int overdue)
    {
        Scale = scale;
        Values = values;
        Bounds = bounds;
        ExpansionHalfWidth = expansionHalfWidth;
        Overdue = overdue;
    }

    public Scale Scale { get; }

    /// <summary>Plain readings, smallest first.</summary>
    public ImmutableArray<ReadValue> Values { get; }

    public ImmutableArray<ReadBound> Bounds { get; }

    /// <summary>Half-width of the expansion coefficient of the part, 1/K.</summary>
    public double ExpansionHalfWidth { get; }

    /// <summary>How many readings were taken after their instrument's calibration had ended; they are not among the others when the policy blocks them.</summary>
    public int Overdue { get; }

    public int Count => Values.Length + Bounds.Length;

    public static ReadingSet Of(PlacedComponent placed, Characteristic characteristic, UnitView view)
    {
        var scale = new Scale(characteristic.Dimension);
        var material = MaterialOf(placed, view);
        var values = new List<ReadValue>();
        var bounds = new List<ReadBound>();
        var overdue = 0;
        foreach (var measurement in view.MeasurementsOf(placed.Component, characteristic.Id))
        {
            var instrument = view.Instrument(measurement.Taken.Instrument);
            if (IsOverdue(measurement, instrument))
            {
                overdue += measurement.Readings.Length;
                if (view.Snapshot.Policy.Overdue == OverdueRule.Block)
                    continue;
            }

            var study = StudyOf(instrument, placed, characteristic);
            foreach (var reading in measurement.Readings)
            {
                if (scale.Of(reading) is { } point)
                    values.Add(Value(point, reading, measurement, instrument, scale, material) with { Study = study });
                else if (scale.Dimension == Dimension.Length && !reading.IsValue)
                    bounds.Add(new ReadBound(reading.Low?.Nanometres, reading.High?.Nanometres, reading.At, InstrumentErrors.OfLimit(instrument, scale)));
            }
        }

        return new ReadingSet(
            scale, [.. values.OrderBy(v => v.Point).ThenBy(v => v.InstrumentId, StringComparer.Ordinal)], [.. bounds], material?.ExpansionHalfWidth ?? 0, overdue);
    }

    private static bool IsOverdue(Measurement measurement, InstrumentState? instrument) =>
        instrument?.CalibrationDue is { } due && DateOnly.FromDateTime(measurement.Taken.At.UtcDateTime) > due;

    /// <summary>A length read at temperature t is brought to 20 °C: l₂₀ = l·(1 − α·(t − 20 °C)).</summary>
    private static ReadValue Value(double point, Reading reading, Measurement measurement, InstrumentState? instrument, Scale scale, Material? material)
    {
        var warmer = scale.Dimension == Dimension.Length ? (measurement.Taken.Temperature ?? ReferenceTemperature) - ReferenceTemperature : 0;
        var atReference = point * (1 - (material?.ExpansionPerKelvin ?? 0) * warmer);
        var step = StepOf(reading, instrument, scale);
        return new ReadValue(
            atReference, reading.At, instrument, measurement.Taken.Instrument, step, InstrumentErrors.OfLimit(instrument, scale), point * warmer);
    }

    /// <summary>What can hide behind the last digit; nothing behind a count, which is a whole number of things.</summary>
    private static double StepOf(Reading reading, InstrumentState? instrument, Scale scale) => scale.Dimension == Dimension.Count
        ? 0
        : scale.Of(instrument?.Resolution) ?? scale.LastDigit(reading) ?? 0;

    private static GaugeCapability? StudyOf(InstrumentState? instrument, PlacedComponent placed, Characteristic characteristic) =>
        instrument?.Studies?.FirstOrDefault(s => s.Kind == placed.Component.Kind && s.Characteristic == characteristic.Id);

    private static Material? MaterialOf(PlacedComponent placed, UnitView view)
    {
        var kind = view.Family.Kinds.GetValueOrDefault(placed.Component.Kind);
        return kind?.Material is { } id ? view.Family.Materials.GetValueOrDefault(id) : null;
    }
}

/// <summary>A reading that only bounds the value.</summary>
/// <param name="Low">On the scale; none when there is none.</param>
/// <param name="High">On the scale; none when there is none.</param>
/// <param name="Place">The plane or angle, if said.</param>
/// <param name="LimitUncertainty">Standard uncertainty of the gauge, on the scale.</param>
internal sealed record ReadBound(double? Low, double? High, string? Place, double LimitUncertainty);
