using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>What a calibration found of an instrument, before anything was adjusted.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Instrument">The instrument.</param>
/// <param name="At">When it was found so, UTC.</param>
/// <param name="Points">The errors as found.</param>
/// <param name="LimitOfError">The limit that they were held against; none when the instrument had none.</param>
/// <param name="IsWithinLimit">Whether every error lay within it; none without a limit.</param>
/// <param name="Certificate">The certificate's own number, if said.</param>
/// <param name="Person">Who records it.</param>
public sealed record Calibration(
    string Id,
    string Instrument,
    DateTimeOffset At,
    ImmutableArray<CalibrationPoint> Points,
    Quantity? LimitOfError,
    bool? IsWithinLimit,
    string? Certificate,
    string Person);

/// <summary>One point of a calibration.</summary>
/// <param name="Nominal">The value of the standard.</param>
/// <param name="Error">What was read less the value of the standard.</param>
public sealed record CalibrationPoint(Quantity Nominal, Quantity Error);
