using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>A closed loop of dimensions: gap = Σ coefficient × dimension. A negative gap is a tight fit or a preload.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>third-end-play</c>.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Group">The assembly it belongs to, for reading and printing.</param>
/// <param name="Terms">Its members.</param>
/// <param name="Window">Where the gap must lie, ends included.</param>
/// <param name="Thermal">The temperatures at which it matters besides 20 °C, or none.</param>
/// <param name="Trial">How it is read directly on the assembly.</param>
/// <param name="Criticality">What hangs on it.</param>
/// <param name="WhenBelow">What happens when the gap is below its window, in plain words, or none.</param>
/// <param name="WhenAbove">What happens when the gap is above its window, in plain words, or none.</param>
public sealed record ClearanceLoop(
    string Id,
    Text Name,
    string Group,
    ImmutableArray<Term> Terms,
    Limits Window,
    Thermal? Thermal,
    TrialMethod Trial,
    Criticality Criticality,
    Text? WhenBelow = null,
    Text? WhenAbove = null);

/// <summary>The temperatures, of all parts alike, at which a clearance matters. Materials come from the kinds.</summary>
/// <param name="Cold">Kelvin.</param>
/// <param name="Hot">Kelvin.</param>
/// <param name="ColdWindow">Window when cold, or none when only the value is wanted.</param>
/// <param name="HotWindow">Window when hot, or none when only the value is wanted.</param>
public sealed record Thermal(double Cold, double Hot, Limits? ColdWindow, Limits? HotWindow);

/// <summary>How a clearance is read directly on the assembly.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<TrialMethod>))]
public enum TrialMethod
{
    /// <summary>It cannot be.</summary>
    None,

    /// <summary>A known piece is fitted and the gap read at several angles.</summary>
    GapWithPieces,

    /// <summary>A known pack is fitted and the float or preload read under a stated load.</summary>
    UnderLoad,
}
