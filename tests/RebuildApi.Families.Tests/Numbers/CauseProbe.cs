using RebuildApi.Engine.Diagnosis;

namespace RebuildApi.Families.Tests;

/// <summary>Diagnoses that rest on one thing alone: a complaint, a sign with the others on the same part ruled out, a test that shows something.</summary>
internal static class CauseProbe
{
    /// <summary>With nothing known, with each sign of the cause, and with each complaint that it brings.</summary>
    public static string OfCause(Family family, int cause)
    {
        var network = new CauseNetwork(family);
        var signs = network.Signs.Select(s => s.Clue).Where(c => c.Links.Any(l => l.Cause == cause));
        var complaints = family.Causes[cause].Explains.Select(e => new SymptomSeen(e.Symptom, e.Gear) { When = e.When })
            .SelectMany(s => s.When is null ? new[] { s, s with { When = new SymptomContext(Road: SymptomRoad.Smooth) } } : [s]);
        return Words(
            network,
            [[], .. signs.SelectMany(s => new[] { [new ClueSeen(s, true)], Others(network, s) }), .. complaints.Select(c => ImmutableArray.Create(new ClueSeen(network.Of(c), true)))]);
    }

    public static string OfTest(Family family, int test)
    {
        var network = new CauseNetwork(family);
        return Words(network, [[], [new ClueSeen(network.Tests[test], true)]]);
    }

    /// <summary>Without a gear, in each gear, and on even roads only.</summary>
    public static string OfSymptom(Family family, int symptom)
    {
        var network = new CauseNetwork(family);
        var (id, gears) = (family.Symptoms[symptom].Id, family.Symptoms[symptom].Gears);
        var said = gears.Select(g => (string?)g).Prepend(null).Select(g => new SymptomSeen(id, g)).SelectMany(s => new[] { s, s with { When = new SymptomContext(Road: SymptomRoad.Smooth) } });
        return Words(network, [.. said.Select(s => ImmutableArray.Create(new ClueSeen(network.Of(s), true)))]);
    }

    private static ImmutableArray<ClueSeen> Others(CauseNetwork network, Clue sign) =>
        [.. network.Signs.Select(s => s.Clue).Where(c => c.Kind == sign.Kind && c.Look == sign.Look && c.Id != sign.Id).Select(c => new ClueSeen(c, false))];

    private static string Words(CauseNetwork network, IEnumerable<ImmutableArray<ClueSeen>> known) => string.Join('\n', known.Select(seen =>
    {
        var answer = Diagnoser.Diagnose(network, new DiagnosisQuestion(seen) { Checks = 500 });
        return Said.Of((answer.Causes.Select(c => (c.Cause.Id, c)), answer.Checks.Select(c => (c.Clue.Id, c.Clue.Minutes, c.Chance, c.Bits, c.PerMinute))));
    }));
}
