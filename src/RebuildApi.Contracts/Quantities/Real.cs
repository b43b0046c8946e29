using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>A quantity that is not a length, in the SI unit of its dimension.</summary>
public sealed record Real : Quantity
{
    /// <summary>A finite value in SI.</summary>
    /// <param name="si">The value in the SI unit that <see cref="Contracts.Dimension"/> names.</param>
    /// <param name="dimension">What it is a quantity of; not a length.</param>
    /// <exception cref="ArgumentException">The value is not finite, or the dimension is length.</exception>
    public Real(double si, Dimension dimension)
    {
        if (!double.IsFinite(si))
            throw new ArgumentException("A quantity is a finite number.", nameof(si));
        if (dimension == Dimension.Length)
            throw new ArgumentException("A length is exact: whole nanometres.", nameof(dimension));
        Si = si;
        Dimension = dimension;
    }

    /// <summary>The value in SI.</summary>
    public double Si { get; }

    /// <summary>What it is a quantity of.</summary>
    public Dimension Dimension { get; }

    /// <inheritdoc/>
    [JsonIgnore]
    public override double InSi => Si;

    /// <inheritdoc/>
    [JsonIgnore]
    public override Dimension Kind => Dimension;
}
