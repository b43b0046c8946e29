using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Serialization;
using RebuildApi.Engine.Diagnosis;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>
/// No judged chance and no minute is there for show: change any one, and what is said changes. Limits, windows, thicknesses, coefficients and parameters
/// have tests of their own beside this one.
/// </summary>
public class EveryNumberTests
{
    private static readonly JsonSerializerOptions s_json = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals, IncludeFields = true };

    [Fact]
    public void Changing_any_prior_likelihood_or_minute_of_a_cause_or_a_test_changes_the_diagnosis()
    {
        var family = Healthy.Brackenmere.Family;
        var numbers = new DeclaredNumbers(family);
        var before = Diagnosed(family);
        var survivors = new ConcurrentBag<string>();

        Parallel.ForEach(numbers.Paths.Where(p => p[0] is "causes" or "tests"), path =>
        {
            if (!numbers.Changed(path).Any(f => Diagnosed(f) != before))
                survivors.Add(DeclaredNumbers.Words(path));
        });

        Assert.True(survivors.IsEmpty, string.Join(Environment.NewLine, survivors.Order(StringComparer.Ordinal)));
    }

    [Fact]
    public void Every_minute_of_every_assembly_step_is_in_the_plan()
    {
        var bench = Healthy.Brackenmere;
        var slower = bench.Family with { Operations = [.. bench.Family.Operations.Select((o, i) => IsAssembly(o) ? o with { Minutes = o.Minutes + i + 1 } : o)] };

        var (before, after) = (Steps(bench, bench.Family), Steps(bench, slower));

        Assert.Equal(bench.Family.Operations.Where(IsAssembly).Select(o => o.Id).Order(StringComparer.Ordinal), before.Keys);
        Assert.Equal(before.Keys, after.Keys);
        Assert.All(before.Keys, id => Assert.True(before[id] < after[id], id));
    }

    private static ImmutableSortedDictionary<string, decimal> Steps(Bench bench, Family family) =>
        UnitPlanner.Plan(new EstimateBook(new UnitView(bench.Snapshot, new FamilyIndex(family))), new PlanRequest(), new NoHooks()).Plan!.Work
            .Where(w => IsAssembly(family.Operations.Single(o => o.Id == w.Operation)))
            .GroupBy(w => w.Operation).ToImmutableSortedDictionary(g => g.Key, g => g.Sum(w => w.Minutes), StringComparer.Ordinal);

    private static bool IsAssembly(Operation operation) => operation is { Effects.IsEmpty: true, Mends.IsEmpty: true };

    /// <summary>Every cause and every check, nothing being known yet.</summary>
    private static string Diagnosed(Family family)
    {
        var answer = Diagnoser.Diagnose(new CauseNetwork(family), new DiagnosisQuestion([]) { Checks = 500 });
        return JsonSerializer.Serialize((answer.Causes, answer.Checks), s_json);
    }
}
