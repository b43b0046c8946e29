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
    DateOnly? CalibrationDue);

/// <summary>How an instrument's limit of error is spread.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<ErrorModel>))]
public enum ErrorModel
{
    /// <summary>Anywhere within the limit with equal chance: u = a/√3.</summary>
    Rectangular,

    /// <summary>The limit is an expanded uncertainty with k = 2: u = a/2.</summary>
    ExpandedK2,
}
