using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>
/// One gearbox design with its rules, declared once by a plug-in as plain data. The engine does the arithmetic, so every family gets
/// uncertainty, solving and explanation for free. Lists compare by reference: two families are equal when their canonical hashes are.
/// </summary>
/// <param name="Version">Which family, and which edition of its rules.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Materials">What parts are made of, for expansion with temperature.</param>
/// <param name="Kinds">The sorts of part.</param>
/// <param name="Positions">The places that parts fill, in stripping order.</param>
/// <param name="Loops">The clearances.</param>
/// <param name="Series">The thicknesses in which selective parts exist.</param>
/// <param name="Operations">The rework that this family permits.</param>
/// <param name="Pairings">The relations that must hold between parts.</param>
/// <param name="Sets">Parts that stay together.</param>
/// <param name="Meshes">Which gears run with which.</param>
/// <param name="Damage">What each class of damage means for each kind.</param>
/// <param name="Hooks">Rules in code, if any, and what they read.</param>
/// <param name="Symptoms">Complaints an owner brings.</param>
/// <param name="Causes">What may lie behind them, and the signs that show it.</param>
/// <param name="Cautions">What can hurt a person or the gearbox whatever the work.</param>
/// <param name="Golden">Worked cases that the rules must reproduce.</param>
public sealed record Family(
    FamilyVersion Version,
    Text Name,
    ImmutableArray<Material> Materials,
    ImmutableArray<PartKind> Kinds,
    ImmutableArray<Position> Positions,
    ImmutableArray<ClearanceLoop> Loops,
    ImmutableArray<Series> Series,
    ImmutableArray<Operation> Operations,
    ImmutableArray<PairingRule> Pairings,
    ImmutableArray<MatchedSet> Sets,
    ImmutableArray<GearMesh> Meshes,
    ImmutableArray<DamagePolicy> Damage,
    ImmutableArray<HookScope> Hooks,
    ImmutableArray<Symptom> Symptoms,
    ImmutableArray<Cause> Causes,
    ImmutableArray<Text> Cautions,
    ImmutableArray<GoldenCase> Golden)
{
    /// <summary>What can be tried to tell the causes apart; none when the family declares no test.</summary>
    public IReadOnlyList<DiagnosticTest>? Tests { get; init; }

    /// <summary>What is tightened to what; none when the family declares nothing. Not written then, so that such a family keeps its hash. Since contract 1.2.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<Fastener>? Fasteners { get; init; }

    /// <summary>What is filled in; none when the family declares nothing. Not written then. Since contract 1.2.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<Lubricant>? Lubricants { get; init; }

    /// <summary>What it wants done before a gearbox leaves a stage; none when the family declares nothing. Not written then. Since contract 1.2.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<FamilyGate>? Gates { get; init; }
}
