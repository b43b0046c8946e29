using System.Globalization;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Snapshots;
using Xunit.Abstractions;

namespace RebuildApi.Families.Tests;

/// <summary>No number is there for show: change any one, and a verdict or an answer changes. Limits turn outcomes to the nanometre in tests of their own beside this one.</summary>
public class EveryNumberTests(ITestOutputHelper output)
{
    private static readonly int s_every = int.Parse(Environment.GetEnvironmentVariable("REBUILD_SOAK_NUMBERS") ?? "40", CultureInfo.InvariantCulture);

    private static readonly string? s_section = Environment.GetEnvironmentVariable("REBUILD_SOAK_SECTION");

    /// <summary>One number in forty, or with REBUILD_SOAK_NUMBERS one in so many; with REBUILD_SOAK_SECTION only those under one path of the family.</summary>
    [Fact]
    public void Changing_any_declared_number_changes_a_named_verdict_or_answer()
    {
        var numbers = new DeclaredNumbers(Healthy.Brackenmere.Family);
        var probes = new NumberProbes(Healthy.Brackenmere);
        var asked = numbers.Sample(s_every).Where(p => s_section is null || $"{DeclaredNumbers.Words(p)}/".StartsWith(s_section + "/", StringComparison.Ordinal)).ToArray();

        string[] survivors = [.. asked.Where(path => !numbers.Changed(path).Any(f => probes.Feel(path, f))).Select(DeclaredNumbers.Words)];

        Array.ForEach(survivors, output.WriteLine);
        output.WriteLine($"{asked.Length} of {numbers.Paths.Length} numbers changed, {survivors.Length} of them without an answer changing");
        Assert.Empty(survivors);
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
}
