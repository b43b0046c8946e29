using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>A place in the family's build that a component fills.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>third-gear</c>.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Kind">The kind of part that belongs there.</param>
/// <param name="Group">The assembly it belongs to, for reading and printing: <c>mainshaft</c>.</param>
/// <param name="Quantity">How many like parts fill it; at least 1.</param>
/// <param name="StripOrder">Where it comes in taking the gearbox apart; the sheet follows it.</param>
/// <param name="Overrides">Limits that differ here from the kind's own.</param>
/// <param name="Fewest">How few like parts will do, for a pack of shims: 1 to the quantity. All of them when none is given.</param>
public sealed record Position(
    string Id,
    Text Name,
    string Kind,
    string Group,
    int Quantity,
    int StripOrder,
    ImmutableArray<LimitOverride> Overrides,
    int? Fewest = null);

/// <summary>Limits of one characteristic that differ at one position from the kind's own. An absent one keeps the kind's.</summary>
/// <param name="Characteristic">Id of the kind's characteristic.</param>
/// <param name="New">Limits when new at this position.</param>
/// <param name="Service">Limits to go back into service at this position.</param>
public sealed record LimitOverride(string Characteristic, Limits? New, Limits? Service);
