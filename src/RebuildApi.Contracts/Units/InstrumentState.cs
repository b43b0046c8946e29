using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>What is known of a measuring instrument.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Type">Its type: <c>outside-micrometer</c>.</param>
/// <param name="Resolution">Smallest step that can be read.</param>
/// <param name="LimitOfError">Largest error that its calibration allows, as a half-width; none when unknown.</param>
/// <param name="ErrorModel">How that error is spread.</param>
/// <param name="CalibrationDue">The day its calibration ends, or none when it has none.</param>
public sealed record InstrumentState(
    string Id,
    string Type,
    Quantity Resolution,
    Quantity? LimitOfError,
    ErrorModel ErrorModel,
    DateOnly? CalibrationDue)
{
    /// <summary>What gauge studies found of it, by characteristic; none when it was never studied.</summary>
    public IReadOnlyList<GaugeCapability>? Studies { get; init; }

    /// <summary>The smallest value that it reads; none when its range is not known below.</summary>
    public Quantity? RangeLow { get; init; }

    /// <summary>The largest value that it reads; none when its range is not known above.</summary>
    public Quantity? RangeHigh { get; init; }

    /// <summary>Standard uncertainty (k = 1) of the standard that it was calibrated or set against; none when unknown.</summary>
    public Quantity? ReferenceUncertainty { get; init; }

    /// <summary>How much its scale grows, 1/K; none when it is taken as right at any temperature.</summary>
    public double? ExpansionPerKelvin { get; init; }

    /// <summary>Half-width of what is not known of that, 1/K.</summary>
    public double? ExpansionHalfWidth { get; init; }

    /// <summary>Times whose readings are in doubt, since a later calibration found errors beyond the limit; none when there are none.</summary>
    public IReadOnlyList<DoubtfulTime>? InDoubt { get; init; }
}

/// <summary>A time in which an instrument may have been wrong: after the last calibration that found it right, up to the one that found it wrong.</summary>
/// <param name="After">The moment it was last found right; none when it never was.</param>
/// <param name="UpTo">The moment it was found wrong.</param>
public sealed record DoubtfulTime(DateTimeOffset? After, DateTimeOffset UpTo)
{
    /// <summary>Whether a moment lies in it, its end included.</summary>
    public bool Holds(DateTimeOffset moment) => !(moment <= After) && moment <= UpTo;
}

/// <summary>What a gauge study found of an instrument at one characteristic, as standard deviations in SI.</summary>
/// <param name="Kind">The kind of part.</param>
/// <param name="Characteristic">The characteristic.</param>
/// <param name="Repeatability">One person reading one part again.</param>
/// <param name="Reproducibility">Between persons or benches, with their interaction.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom behind the repeatability.</param>
public sealed record GaugeCapability(
    string Kind, string Characteristic, double Repeatability, double Reproducibility, double DegreesOfFreedom)
{
    /// <summary>The family whose parts were studied; none when the study speaks for every family with such a kind.</summary>
    public string? Family { get; init; }
}

/// <summary>How an instrument's limit of error is spread.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<ErrorModel>))]
public enum ErrorModel
{
    /// <summary>Anywhere within the limit with equal chance: u = a/√3.</summary>
    Rectangular,

    /// <summary>The limit is an expanded uncertainty with k = 2: u = a/2.</summary>
    ExpandedK2,
}
