using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>
/// One raw reading as an interval. A plain reading has both ends alike; "at least" (off the gauge, no-go) has no upper end; "at most"
/// (a go gauge, "tight": a gap of 0 or less) has no lower end.
/// </summary>
/// <param name="Low">Lower end of a length; none when there is none, or the reading is not a length.</param>
/// <param name="High">Upper end of a length.</param>
/// <param name="Si">The value in SI when it is not a length.</param>
/// <param name="AsSent">The number as it was sent, letter for letter.</param>
/// <param name="Unit">The unit as it was sent.</param>
/// <param name="At">The plane or angle it was taken at, if said.</param>
public sealed record Reading(Length? Low, Length? High, double? Si, string AsSent, string Unit, string? At)
{
    /// <summary>Whether it is a single value and not a bound.</summary>
    [JsonIgnore]
    public bool IsValue => Si is not null || (Low is { } low && High is { } high && low == high);

    /// <summary>A plain reading of a length.</summary>
    public static Reading Of(Length value, string asSent, string unit, string? at = null) => new(value, value, null, asSent, unit, at);
}
