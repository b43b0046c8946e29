using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>One gearbox in the shop.</summary>
/// <param name="Id">Its id; a client may supply one.</param>
/// <param name="Tag">What is written on it.</param>
/// <param name="Family">The family and edition that it is pinned to.</param>
/// <param name="Customer">Whose it is, in the shop's own words, if said.</param>
/// <param name="Complaint">What is wrong with it.</param>
/// <param name="Words">The complaint in the owner's own words, if said.</param>
/// <param name="Stage">Where it is: one of <see cref="UnitStages"/>.</param>
/// <param name="Opened">When it was taken in, UTC.</param>
/// <param name="OpenedBy">Who took it in.</param>
/// <param name="Version">Row version; grows by one with every change of the unit or of anything in it.</param>
public sealed record Unit(
    string Id,
    string Tag,
    FamilyVersion Family,
    string? Customer,
    ImmutableArray<SymptomSeen> Complaint,
    string? Words,
    string Stage,
    DateTimeOffset Opened,
    string OpenedBy,
    long Version);
