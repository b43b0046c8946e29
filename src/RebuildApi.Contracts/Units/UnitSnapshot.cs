using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>
/// Everything known of one unit at one moment. The engine and the hooks see this and nothing else: no clock, no files, no network.
/// Readings and findings that were superseded are not in it.
/// </summary>
/// <param name="Unit">Id of the unit.</param>
/// <param name="Family">The family and edition it is judged by.</param>
/// <param name="Complaint">Symptom ids taken down at intake.</param>
/// <param name="Components">The parts, each at its newest revision.</param>
/// <param name="Placements">Which part is where.</param>
/// <param name="Measurements">What was read on parts.</param>
/// <param name="Trials">What was read on trial assemblies.</param>
/// <param name="Findings">What was seen.</param>
/// <param name="Instruments">The instruments that the readings name.</param>
/// <param name="Policy">The shop's rules.</param>
public sealed record UnitSnapshot(
    string Unit,
    FamilyVersion Family,
    ImmutableArray<SymptomSeen> Complaint,
    ImmutableArray<Component> Components,
    ImmutableArray<Placement> Placements,
    ImmutableArray<Measurement> Measurements,
    ImmutableArray<TrialAssembly> Trials,
    ImmutableArray<Finding> Findings,
    ImmutableArray<InstrumentState> Instruments,
    Policy Policy)
{
    /// <summary>The tests that were tried; none when none was.</summary>
    public IReadOnlyList<TestSeen>? Tests { get; init; }
}

/// <summary>A symptom that the owner brought.</summary>
/// <param name="Symptom">Id of the family's symptom.</param>
/// <param name="Gear">The gear it belongs to, if one.</param>
public sealed record SymptomSeen(string Symptom, string? Gear)
{
    /// <summary>When it comes, as far as the owner said.</summary>
    public SymptomContext? When { get; init; }
}
