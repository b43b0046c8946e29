namespace RebuildApi.Contracts;

/// <summary>How, by whom and when something was read or seen.</summary>
/// <param name="Instrument">Id of the instrument, if one was used.</param>
/// <param name="Method">The method, if it was said.</param>
/// <param name="Person">Who.</param>
/// <param name="Bench">Where.</param>
/// <param name="At">When, UTC.</param>
/// <param name="Temperature">Temperature of the part in kelvin, if it was said; else 20 °C is assumed.</param>
public sealed record Taken(string? Instrument, string? Method, string Person, string Bench, DateTimeOffset At, double? Temperature)
{
    /// <summary>Temperature of the instrument in kelvin, if it was said; else it is as warm as the part.</summary>
    public double? InstrumentTemperature { get; init; }

    /// <summary>How far off the temperatures may be, kelvins; they are taken as right where it was not said.</summary>
    public double? TemperatureHalfWidth { get; init; }
}
