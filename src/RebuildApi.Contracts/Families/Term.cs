using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>One member of a clearance: a dimension with a signed rational coefficient. Positive opens the gap, negative closes it.</summary>
/// <param name="Of">The dimension.</param>
/// <param name="Numerator">Signed, not zero.</param>
/// <param name="Denominator">Positive.</param>
public sealed record Term(Dim Of, int Numerator, int Denominator = 1);

/// <summary>A dimension in a clearance.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "is")]
[JsonDerivedType(typeof(OfPart), "part")]
[JsonDerivedType(typeof(OfSeries), "series")]
[JsonDerivedType(typeof(Fixed), "fixed")]
public abstract record Dim
{
    private protected Dim()
    {
    }
}

/// <summary>A characteristic of the part in a position.</summary>
/// <param name="At">Which.</param>
public sealed record OfPart(Address At) : Dim;

/// <summary>The selective piece or pieces at a position. Two loops that name the same position share the piece.</summary>
/// <param name="Series">The thicknesses that exist.</param>
/// <param name="Position">Where the piece sits.</param>
/// <param name="MaxPieces">How many pieces may be stacked there; 1 for a ring, more for a shim pack.</param>
public sealed record OfSeries(string Series, string Position, int MaxPieces = 1) : Dim;

/// <summary>A length that does not vary.</summary>
/// <param name="Value">The length.</param>
public sealed record Fixed(Length Value) : Dim;
