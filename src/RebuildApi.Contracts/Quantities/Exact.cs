using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>An exact length.</summary>
/// <param name="Value">Whole nanometres.</param>
public sealed record Exact(Length Value) : Quantity
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override double InSi => Value.InMetres;

    /// <inheritdoc/>
    [JsonIgnore]
    public override Dimension Kind => Dimension.Length;
}
