using Xunit.Abstractions;

namespace RebuildApi.Families.Tests.Diagnosis;

/// <summary>How often the networks name what a rebuilder would name first. The cases stood before the networks; common practice, no source.</summary>
public sealed class DiagnosisCaseTests(ITestOutputHelper output)
{
    [Fact]
    public void The_cause_that_a_rebuilder_names_first_is_nearly_always_among_the_first_three()
    {
        var cases = DiagnosisCases.Written.Cases;
        var (first, among, shared) = (0, 0, 0);
        foreach (var one in cases)
        {
            var top = one.Top(3);
            first += top[0] == one.Expected[0] ? 1 : 0;
            among += top.Contains(one.Expected[0]) ? 1 : 0;
            shared += top.Intersect(one.Expected).Count();
            output.WriteLine($"{one.Id}: expected {string.Join(", ", one.Expected)}; named {string.Join(", ", one.Diagnose().Causes.Take(4).Select(c => FormattableString.Invariant($"{c.Cause.Id} {c.Probability:0.00} ({c.Low:0.00}..{c.High:0.00})")))}");
        }

        output.WriteLine($"{cases.Length} cases: first named first {first}, among the first three {among}, of {3 * cases.Length} expected causes {shared} among the first three");
        Assert.True(cases.Length >= 25);
        Assert.True(among >= cases.Length - 1);
        Assert.True(first >= cases.Length - 2);
        Assert.True(shared >= 2 * cases.Length);
    }
}
