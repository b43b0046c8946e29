using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>A defined measurable feature of a kind (ISO 9000 sense).</summary>
/// <param name="Id">Unique within its kind: <c>width</c>, <c>dog.drive-flank-angle</c>.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Dimension">What it is a quantity of.</param>
/// <param name="Report">Which statistic of the readings is judged.</param>
/// <param name="MinimumReadings">How many readings make a measurement; at least 1.</param>
/// <param name="New">Limits of a new part: the drawing, also used for a part that is not measured yet.</param>
/// <param name="Service">Limits to go back into service.</param>
/// <param name="Unmeasured">How a part that is not measured yet is spread between its new limits.</param>
/// <param name="Criticality">What hangs on it.</param>
/// <param name="DerivedFrom">How it follows from others, or none when it is read directly.</param>
/// <param name="Methods">How it may be measured, as instrument types: <c>outside-micrometer</c>.</param>
public sealed record Characteristic(
    string Id,
    Text Name,
    Dimension Dimension,
    Statistic Report,
    int MinimumReadings,
    Limits? New,
    Limits? Service,
    Distribution Unmeasured,
    Criticality Criticality,
    Derivation? DerivedFrom,
    ImmutableArray<string> Methods);

/// <summary>Which statistic of the readings is judged.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Statistic>))]
public enum Statistic
{
    /// <summary>The arithmetic mean.</summary>
    Mean,

    /// <summary>The smallest reading: a worn shaft is as thin as its thinnest plane.</summary>
    Min,

    /// <summary>The largest reading: a worn bore is as wide as its widest plane.</summary>
    Max,

    /// <summary>Smallest and largest each against the limits.</summary>
    MinAndMax,

    /// <summary>Largest minus smallest: ovality, runout.</summary>
    Spread,
}

/// <summary>How a value that is not measured lies between its limits.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Distribution>))]
public enum Distribution
{
    /// <summary>Nothing may be assumed: without a reading there is no value.</summary>
    None,

    /// <summary>Anywhere with equal chance.</summary>
    Rectangular,

    /// <summary>More likely in the middle.</summary>
    Triangular,

    /// <summary>Normal, with the limits three standard deviations from the middle.</summary>
    Normal,
}

/// <summary>What hangs on a characteristic or a clearance.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Criticality>))]
public enum Criticality
{
    /// <summary>Wear and noise.</summary>
    Ordinary,

    /// <summary>The gearbox does its job, or does not.</summary>
    Functional,

    /// <summary>A person can be hurt: a named person signs.</summary>
    SafetyCritical,
}
