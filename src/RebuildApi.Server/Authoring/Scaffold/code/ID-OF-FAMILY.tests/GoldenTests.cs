using NameOfFamily;
using RebuildApi.Engine.Families;
using RebuildApi.Engine.Judging;
using Xunit;

namespace NameOfFamily.Tests;

public class GoldenTests
{
    [Fact]
    public void The_family_hangs_together() =>
        Assert.Empty(new NameOfFamilyPlugin().Declare().SelectMany(f => FamilyCheck.Check(f)).Where(d => d.IsError).Select(d => $"{d.Field}: {d.Message}"));

    [Fact]
    public void Every_worked_case_comes_out_as_it_says() =>
        Assert.Empty(new NameOfFamilyPlugin().Declare().SelectMany(f => GoldenCheck.Run(f, new NoHooks())).Select(d => $"{d.Field}: {d.Message}"));

    [Fact]
    public void Every_limit_clearance_and_pairing_has_a_case_on_each_side() =>
        Assert.Empty(new NameOfFamilyPlugin().Declare().SelectMany(f => LoadCheck.Check(f)).Select(d => $"{d.Field}: {d.Message}"));
}
