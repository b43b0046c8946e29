using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Server.Wire;

/// <summary>One line of the tightening list: bolts, nuts, screws or plugs that are all tightened alike. The maker's data stands before it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What a person calls them.</param>
/// <param name="Positions">The places that they hold.</param>
/// <param name="Quantity">How many there are.</param>
/// <param name="Torque">What each is tightened to, in N·m, and where the numbers come from.</param>
/// <param name="TorqueImperial">The same in ft·lbf.</param>
/// <param name="Angle">How far each is turned on after the torque is reached.</param>
/// <param name="Thread">What goes on the thread.</param>
/// <param name="Renewal">When new ones go in.</param>
/// <param name="Sequence">In what order and in how many rounds.</param>
/// <param name="Criticality">What hangs on them.</param>
public sealed record FastenerWire(
    string Id,
    string Name,
    ImmutableArray<string> Positions,
    int Quantity,
    LimitsWire Torque,
    LimitsWire TorqueImperial,
    LimitsWire? Angle,
    string? Thread,
    string? Renewal,
    string? Sequence,
    Criticality Criticality)
{
    /// <summary>The tightening list of a family.</summary>
    public static ImmutableArray<FastenerWire> All(Family family, Display show) => [.. (family.Fasteners ?? []).Select(f => From(f, show))];

    private static FastenerWire From(Fastener f, Display show) => new(
        f.Id, show.Words(f.Name), f.Positions, f.Quantity, LimitsWire.In(f.Torque, "N·m")!, LimitsWire.In(f.Torque, "ft·lbf")!, LimitsWire.From(f.Angle, show),
        f.Thread is { } thread ? show.Words(thread) : null, f.Renewal is { } renewal ? show.Words(renewal) : null, f.Sequence is { } sequence ? show.Words(sequence) : null, f.Criticality);
}

/// <summary>What is filled in or put on. The maker's data stands before it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Grade">What sort, by an open classification.</param>
/// <param name="Positions">The places that it stands for.</param>
/// <param name="Quantity">How much, in litres, and where the numbers come from.</param>
/// <param name="QuantityUs">The same in US quarts.</param>
/// <param name="Level">How one sees that it is enough.</param>
/// <param name="Temperature">At which temperature the level is read, °C.</param>
/// <param name="TemperatureFahrenheit">The same in °F.</param>
/// <param name="Linings">What it must not do to the linings of the synchronizer rings.</param>
public sealed record LubricantWire(
    string Id,
    string Name,
    string Grade,
    ImmutableArray<string> Positions,
    LimitsWire Quantity,
    LimitsWire QuantityUs,
    string Level,
    LimitsWire? Temperature,
    LimitsWire? TemperatureFahrenheit,
    string? Linings)
{
    /// <summary>What a family wants filled in.</summary>
    public static ImmutableArray<LubricantWire> All(Family family, Display show) => [.. (family.Lubricants ?? []).Select(l => From(l, show))];

    private static LubricantWire From(Lubricant l, Display show) => new(
        l.Id, show.Words(l.Name), show.Words(l.Grade), l.Positions, LimitsWire.In(l.Quantity, "L")!, LimitsWire.In(l.Quantity, "US qt")!, show.Words(l.Level),
        LimitsWire.In(l.Temperature, "°C"), LimitsWire.In(l.Temperature, "°F"), l.Linings is { } linings ? show.Words(linings) : null);
}

/// <summary>Something that a family wants done before a gearbox leaves a stage.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Requirement">What the gate calls it: <c>family-</c> and its id.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Stage">The stage that is not left without it.</param>
/// <param name="Reads">The clearance that must have been read, if it is that.</param>
/// <param name="Tries">The test that must have been tried, if it is that.</param>
/// <param name="Signs">How the check is tried that must have been signed for, if it is that.</param>
/// <param name="Reason">Why.</param>
/// <param name="Criticality">What hangs on it.</param>
/// <param name="MayExcept">Whether it may be left out over a signature, where the shop's policy allows that too.</param>
public sealed record FamilyGateWire(
    string Id, string Requirement, string Name, GateStage Stage, string? Reads, string? Tries, string? Signs, string Reason, Criticality Criticality, bool MayExcept)
{
    /// <summary>What a gate of a family is called as a requirement and, where it is a check, when it is signed for.</summary>
    public static string RequirementOf(FamilyGate gate) => "family-" + gate.Id;

    /// <summary>What a family wants done.</summary>
    public static ImmutableArray<FamilyGateWire> All(Family family, Display show) => [.. (family.Gates ?? []).Select(g => From(g, show))];

    private static FamilyGateWire From(FamilyGate g, Display show) => new(
        g.Id, RequirementOf(g), show.Words(g.Name), g.Stage, (g.Demand as LoopRead)?.Loop, (g.Demand as TestTried)?.Test,
        g.Demand is CheckSigned signed ? show.Words(signed.How) : null, show.Words(g.Reason), g.Criticality, g.MayExcept);
}
