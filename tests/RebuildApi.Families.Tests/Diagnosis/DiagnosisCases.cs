using System.Text.Json;
using RebuildApi.Engine.Diagnosis;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests.Diagnosis;

/// <summary>The cases that were written down before the networks were built.</summary>
/// <param name="Note">What they are.</param>
/// <param name="Cases">The cases.</param>
internal sealed record DiagnosisCases(string Note, ImmutableArray<DiagnosisCase> Cases)
{
    public static DiagnosisCases Written { get; } = JsonSerializer.Deserialize<DiagnosisCases>(
        File.ReadAllText(Repository.PathTo("tests", "RebuildApi.Families.Tests", "Diagnosis", "cases.json")), JsonSerializerOptions.Web)!;

    public static DiagnosisCase Of(string id) => Written.Cases.Single(c => c.Id == id);
}

/// <summary>A complaint with what was tried and found, and the causes that a rebuilder would name.</summary>
internal sealed record DiagnosisCase(
    string Id, string Family, string Says, ImmutableArray<SaidSymptom> Complaint, ImmutableArray<string> Expected, SaidTest[]? Checks = null, SaidFinding[]? Found = null)
{
    /// <summary>What the engine says of it.</summary>
    public DiagnosisAnswer Diagnose()
    {
        var family = Shipped.Of(Family);
        var network = new CauseNetwork(family);
        return Diagnoser.Diagnose(network, new DiagnosisQuestion(ClueBook.Of(network, View(family), ImmutableDictionary<string, Standing>.Empty)));
    }

    /// <summary>The first causes that the engine names.</summary>
    public ImmutableArray<string> Top(int count) => [.. Diagnose().Causes.Take(count).Select(c => c.Cause.Id)];

    private UnitView View(Family family)
    {
        var snapshot = (Found ?? []).Aggregate(SnapshotBuilder.Complete(family), (s, f) => s.Sees(f.Component(family), f.Observation())).Snapshot with
        {
            Complaint = [.. Complaint.Select(c => c.Seen())],
            Tests = [.. (Checks ?? []).Select((t, i) => new TestSeen($"t{i}", t.Test, t.Shown, SnapshotBuilder.Taken(null)))],
        };
        return new UnitView(snapshot, new FamilyIndex(family));
    }
}

internal sealed record SaidSymptom(string Symptom, string? Gear = null, string? Temperature = null, string? Road = null)
{
    public SymptomSeen Seen() => new(Symptom, Gear)
    {
        When = Temperature is null && Road is null
            ? null
            : new SymptomContext(
                Temperature: Temperature is null ? null : Enum.Parse<SymptomTemperature>(Temperature, ignoreCase: true),
                Road: Road is null ? null : Enum.Parse<SymptomRoad>(Road, ignoreCase: true)),
    };
}

internal sealed record SaidTest(string Test, bool Shown);

internal sealed record SaidFinding(string Position, string? Attribute = null, string? Value = null, string? Damage = null, string? Place = null)
{
    public Observation Observation() => Damage is null ? new AttributeSeen(Attribute!, Value!) : new DamageSeen(Damage, "moderate", Place);

    public string Component(Family family) => family.Positions.Single(p => p.Id == Position).Quantity == 1 ? Position : Position + "-1";
}
