using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>When a symptom comes, beside the gear it comes in. What is not said is left open.</summary>
/// <param name="Load">On the drive or on the coast.</param>
/// <param name="Clutch">With the clutch pressed or not.</param>
/// <param name="Temperature">Cold or hot.</param>
/// <param name="Road">On smooth or on rough road.</param>
public sealed record SymptomContext(
    SymptomLoad? Load = null, SymptomClutch? Clutch = null, SymptomTemperature? Temperature = null, SymptomRoad? Road = null);

/// <summary>Which way the power runs.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<SymptomLoad>))]
public enum SymptomLoad
{
    /// <summary>The engine drives the wheels.</summary>
    Drive,

    /// <summary>The wheels drive the engine.</summary>
    Coast,
}

/// <summary>Whether the clutch is pressed.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<SymptomClutch>))]
public enum SymptomClutch
{
    /// <summary>The pedal is up: the input turns with the engine.</summary>
    Released,

    /// <summary>The pedal is down.</summary>
    Pressed,
}

/// <summary>How warm the gearbox is.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<SymptomTemperature>))]
public enum SymptomTemperature
{
    /// <summary>Just started.</summary>
    Cold,

    /// <summary>Driven warm.</summary>
    Hot,
}

/// <summary>What the road is like.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<SymptomRoad>))]
public enum SymptomRoad
{
    /// <summary>Even.</summary>
    Smooth,

    /// <summary>It shakes the car.</summary>
    Rough,
}
