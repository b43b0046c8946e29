using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Wire;

/// <summary>A family in short.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Version">The edition of its rules.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Positions">How many positions it has.</param>
/// <param name="Characteristics">How many characteristics its kinds have.</param>
/// <param name="Clearances">How many clearances it has.</param>
/// <param name="Pairings">How many pairing rules it has.</param>
/// <param name="DeclarationSha256">Hash of its canonical declaration.</param>
public sealed record FamilySummaryWire(
    string Id, string Version, string Name, int Positions, int Characteristics, int Clearances, int Pairings, string DeclarationSha256)
{
    /// <summary>From the engine's index.</summary>
    public static FamilySummaryWire From(FamilyIndex index, Display show) => new(
        index.Family.Version.Id,
        index.Family.Version.SemVer,
        show.Words(index.Family.Name),
        index.Family.Positions.Length,
        index.Family.Kinds.Sum(k => k.Characteristics.Length),
        index.Family.Loops.Length,
        index.Family.Pairings.Length,
        index.DeclarationSha256);
}

/// <summary>A family with everything it declares.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Version">The edition of its rules.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="DeclarationSha256">Hash of its canonical declaration.</param>
/// <param name="Cautions">What can hurt a person or the gearbox whatever the work.</param>
/// <param name="Positions">The places that parts fill, in stripping order.</param>
/// <param name="Kinds">The sorts of part.</param>
/// <param name="Clearances">The clearances.</param>
/// <param name="Series">The thicknesses in which selective parts exist.</param>
/// <param name="Operations">The rework that the family permits.</param>
/// <param name="Pairings">The relations that must hold between parts.</param>
/// <param name="Sets">Parts that stay together.</param>
/// <param name="Meshes">Which gears run with which.</param>
/// <param name="Symptoms">Complaints an owner brings.</param>
/// <param name="Tightening">What is tightened to what; the maker's data stands before it.</param>
/// <param name="Lubricants">What is filled in; the maker's data stands before it.</param>
/// <param name="Gates">What the family wants done before a gearbox leaves a stage.</param>
public sealed record FamilyWire(
    string Id,
    string Version,
    string Name,
    string DeclarationSha256,
    ImmutableArray<string> Cautions,
    ImmutableArray<PositionWire> Positions,
    ImmutableArray<KindWire> Kinds,
    ImmutableArray<ClearanceRuleWire> Clearances,
    ImmutableArray<SeriesWire> Series,
    ImmutableArray<OperationWire> Operations,
    ImmutableArray<PairingRuleWire> Pairings,
    ImmutableArray<SetWire> Sets,
    ImmutableArray<MeshWire> Meshes,
    ImmutableArray<SymptomWire> Symptoms,
    ImmutableArray<FastenerWire> Tightening,
    ImmutableArray<LubricantWire> Lubricants,
    ImmutableArray<FamilyGateWire> Gates)
{
    /// <summary>From the engine's index.</summary>
    public static FamilyWire From(FamilyIndex index, Display show)
    {
        var family = index.Family;
        return new(
            family.Version.Id,
            family.Version.SemVer,
            show.Words(family.Name),
            index.DeclarationSha256,
            [.. family.Cautions.Select(show.Words)],
            [.. family.Positions.OrderBy(p => p.StripOrder).Select(p => PositionWire.From(p, show))],
            [.. family.Kinds.Select(k => KindWire.From(k, show))],
            [.. family.Loops.Select(l => ClearanceRuleWire.From(l, show))],
            [.. family.Series.Select(s => SeriesWire.From(s, show))],
            [.. family.Operations.Select(o => OperationWire.From(o, show))],
            [.. family.Pairings.Select(p => PairingRuleWire.From(p, show))],
            [.. family.Sets.Select(s => new SetWire(s.Id, s.Positions, s.Bond))],
            [.. family.Meshes.Select(m => new MeshWire(m.Id, m.Driver, m.Driven, m.CentreDistance.ToString(), m.Gears))],
            [.. family.Symptoms.Select(s => new SymptomWire(s.Id, show.Words(s.Name), s.Gears))],
            FastenerWire.All(family, show),
            LubricantWire.All(family, show),
            FamilyGateWire.All(family, show));
    }
}

/// <summary>Parts that stay together.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Positions">The positions in the set.</param>
/// <param name="Bond">How strictly.</param>
public sealed record SetWire(string Id, ImmutableArray<string> Positions, SetBond Bond);

/// <summary>Two rows of teeth that run together.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Driver">The driving row on the drive side.</param>
/// <param name="Driven">The driven row.</param>
/// <param name="CentreDistance">The characteristic that sets the distance of the axes.</param>
/// <param name="Gears">The gears in which the mesh carries the load.</param>
public sealed record MeshWire(string Id, string Driver, string Driven, string CentreDistance, ImmutableArray<string> Gears);

/// <summary>A complaint that an owner brings.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Gears">The gears it may belong to; empty when it is of the whole gearbox.</param>
public sealed record SymptomWire(string Id, string Name, ImmutableArray<string> Gears);
