using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Quantities;

/// <summary>A unit that a quantity may be sent or shown in.</summary>
/// <param name="Ucum">Its code in the Unified Code for Units of Measure, case sensitive.</param>
/// <param name="Symbol">How it is shown.</param>
/// <param name="Words">The other ways in which a shop writes it.</param>
/// <param name="Dimension">What it measures.</param>
public abstract record UnitOfMeasure(string Ucum, string Symbol, ImmutableArray<string> Words, Dimension Dimension)
{
    /// <summary>Whether a text names this unit.</summary>
    public bool IsCalled(string text) => text == Ucum || text == Symbol || Words.Contains(text);
}

/// <summary>A unit of length: a whole number of nanometres.</summary>
/// <param name="Ucum">UCUM code.</param>
/// <param name="Symbol">How it is shown.</param>
/// <param name="Words">Other spellings.</param>
/// <param name="Nanometres">How many nanometres make one.</param>
public sealed record LengthUnit(string Ucum, string Symbol, ImmutableArray<string> Words, long Nanometres)
    : UnitOfMeasure(Ucum, Symbol, Words, Dimension.Length);

/// <summary>A unit of anything else, converted by the units library.</summary>
/// <param name="Ucum">UCUM code.</param>
/// <param name="Symbol">How it is shown.</param>
/// <param name="Words">Other spellings.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="ToSi">From this unit to SI.</param>
/// <param name="FromSi">From SI to this unit.</param>
public sealed record RealUnit(
    string Ucum,
    string Symbol,
    ImmutableArray<string> Words,
    Dimension Dimension,
    Func<double, double> ToSi,
    Func<double, double> FromSi) : UnitOfMeasure(Ucum, Symbol, Words, Dimension);
