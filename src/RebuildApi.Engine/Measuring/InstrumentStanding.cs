using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>Whether an instrument could be relied on for a reading.</summary>
internal static class InstrumentStanding
{
    /// <summary>Whether its calibration had ended when something was read; its last day still counts.</summary>
    public static bool IsOverdue(InstrumentState instrument, DateTimeOffset at) =>
        instrument.CalibrationDue is { } due && DateOnly.FromDateTime(at.UtcDateTime) > due;

    /// <summary>Whether a later calibration found that it may have been wrong then.</summary>
    public static bool IsInDoubt(InstrumentState instrument, DateTimeOffset at) => instrument.InDoubt?.Any(t => t.Holds(at)) == true;

    /// <summary>Whether a plain reading lies outside its range; a bound such as "tight" is no place on its scale.</summary>
    public static bool IsOutside(Reading reading, InstrumentState instrument, Scale scale) =>
        scale.Of(reading) is { } point && (point < scale.Of(instrument.RangeLow) || point > scale.Of(instrument.RangeHigh));
}
