using System.Text.Json.Serialization;
using RebuildApi.Contracts;

namespace RebuildApi.Server.Requests;

/// <summary>A value with its unit, as it was sent. A bare number is refused.</summary>
/// <param name="Value">The number.</param>
/// <param name="Unit">The unit: a UCUM code or the shop's usual word (mm, um, in, thou, N·m, ft·lbf, °C, °F).</param>
public sealed record SentQuantity(SentNumber Value, string Unit)
{
    /// <summary>The quantity, where the field says which dimension it has.</summary>
    [JsonIgnore]
    public Quantity? Read { get; init; }

    /// <summary>The length, where the field is one.</summary>
    [JsonIgnore]
    public Length Length => ((Exact)Read!).Value;

    /// <summary>The value in SI, where the field says which dimension it has.</summary>
    [JsonIgnore]
    public double Si => Read!.InSi;
}
