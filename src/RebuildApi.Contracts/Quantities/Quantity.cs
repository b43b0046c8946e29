using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>A value with its dimension: an <see cref="Exact"/> length, or a <see cref="Real"/> of any other dimension.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "is")]
[JsonDerivedType(typeof(Exact), "exact")]
[JsonDerivedType(typeof(Real), "real")]
public abstract record Quantity
{
    private protected Quantity()
    {
    }

    /// <summary>The value in the SI unit of its dimension, as a double for estimates.</summary>
    [JsonIgnore]
    public abstract double InSi { get; }

    /// <summary>What it is a quantity of.</summary>
    [JsonIgnore]
    public abstract Dimension Kind { get; }
}
