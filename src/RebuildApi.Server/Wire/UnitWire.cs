using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>A gearbox in the shop.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Tag">What is written on it.</param>
/// <param name="Family">The family and edition it is pinned to.</param>
/// <param name="Customer">Whose it is.</param>
/// <param name="Complaint">What is wrong with it.</param>
/// <param name="Words">The complaint in the owner's own words.</param>
/// <param name="Stage">Where it is between intake and hand-over.</param>
/// <param name="Opened">When it was taken in, UTC.</param>
/// <param name="OpenedBy">Who took it in.</param>
/// <param name="Version">Grows by one with every change of the unit or of anything in it; the ETag carries it.</param>
public sealed record UnitWire(
    string Id,
    string Tag,
    FamilyEditionWire Family,
    string? Customer,
    ImmutableArray<SymptomSeenWire> Complaint,
    string? Words,
    string Stage,
    DateTimeOffset Opened,
    string OpenedBy,
    long Version)
{
    /// <summary>From the store.</summary>
    public static UnitWire From(Unit unit) => new(
        unit.Id, unit.Tag, FamilyEditionWire.From(unit.Family), unit.Customer, [.. unit.Complaint.Select(SymptomSeenWire.From)],
        unit.Words, unit.Stage, unit.Opened, unit.OpenedBy, unit.Version);
}

/// <summary>A symptom that the owner brought.</summary>
/// <param name="Symptom">Id of the family's symptom.</param>
/// <param name="Gear">The gear it belongs to, if one.</param>
/// <param name="Load">Which way the power runs when it comes.</param>
/// <param name="Clutch">Whether the clutch is pressed when it comes.</param>
/// <param name="Temperature">How warm the gearbox is when it comes.</param>
/// <param name="Road">What the road is like when it comes.</param>
public sealed record SymptomSeenWire(
    string Symptom, string? Gear, SymptomLoad? Load = null, SymptomClutch? Clutch = null, SymptomTemperature? Temperature = null, SymptomRoad? Road = null)
{
    /// <summary>From the contract.</summary>
    public static SymptomSeenWire From(SymptomSeen seen) =>
        new(seen.Symptom, seen.Gear, seen.When?.Load, seen.When?.Clutch, seen.When?.Temperature, seen.When?.Road);
}

/// <summary>A unit to be taken in.</summary>
/// <param name="Tag">What is written on it.</param>
/// <param name="Family">Id of the family.</param>
/// <param name="Person">Who takes it in.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
/// <param name="Customer">Whose it is, in the shop's own words.</param>
/// <param name="Complaint">What is wrong with it.</param>
/// <param name="Words">The complaint in the owner's own words.</param>
public sealed record UnitRequest(
    [Words(60)] string Tag,
    [Id] string Family,
    [Words(100)] string Person,
    [Id] string? Id = null,
    [Words(200)] string? Customer = null,
    [Entries(0, 50)] ImmutableArray<SymptomRequest>? Complaint = null,
    [Words(2000, Lines = true)] string? Words = null);

/// <summary>A symptom that the owner brings.</summary>
/// <param name="Symptom">Id of the family's symptom.</param>
/// <param name="Gear">The gear it belongs to, if one.</param>
/// <param name="Load">Which way the power runs when it comes, if the owner said.</param>
/// <param name="Clutch">Whether the clutch is pressed when it comes, if the owner said.</param>
/// <param name="Temperature">How warm the gearbox is when it comes, if the owner said.</param>
/// <param name="Road">What the road is like when it comes, if the owner said.</param>
public sealed record SymptomRequest(
    [Id] string Symptom,
    [Id] string? Gear = null,
    SymptomLoad? Load = null,
    SymptomClutch? Clutch = null,
    SymptomTemperature? Temperature = null,
    SymptomRoad? Road = null)
{
    /// <summary>To the contract.</summary>
    public SymptomSeen ToContract() => new(Symptom, Gear)
    {
        When = Load is null && Clutch is null && Temperature is null && Road is null ? null : new SymptomContext(Load, Clutch, Temperature, Road),
    };
}

/// <summary>Changes of a unit; what is left out stays, null takes away.</summary>
/// <param name="Tag">What is written on it.</param>
/// <param name="Customer">Whose it is.</param>
/// <param name="Complaint">What is wrong with it.</param>
/// <param name="Words">The complaint in the owner's own words.</param>
public sealed record UnitChangeRequest(
    [Words(60)] string? Tag = null,
    [Words(200)] string? Customer = null,
    [Entries(0, 50)] ImmutableArray<SymptomRequest>? Complaint = null,
    [Words(2000, Lines = true)] string? Words = null);
