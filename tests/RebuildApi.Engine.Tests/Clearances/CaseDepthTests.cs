using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;

namespace RebuildApi.Engine.Tests.Clearances;

public class CaseDepthTests
{
    [Fact] // ISO 2639 / ISO 18203, interpolation from memory: 0.70 mm 580 HV, 0.90 mm 520 HV -> 0.80 mm.
    public void Depth_is_found_between_the_two_points_about_550() =>
        Assert.Equal(Length.Millimetres(0.80m), CaseDepth.Of([At(0.10m, 720), At(0.70m, 580), At(0.90m, 520), At(2.40m, 340)]).Depth);

    [Fact]
    public void Point_exactly_at_the_limit_is_still_hard() =>
        Assert.Equal(Length.Millimetres(0.70m), CaseDepth.Of([At(0.10m, 720), At(0.70m, 550), At(0.90m, 520)]).Depth);

    [Fact]
    public void Soft_surface_has_no_layer()
    {
        var answer = CaseDepth.Of([At(0.10m, 540), At(0.30m, 500)]);

        Assert.Null(answer.AtLeast);
        Assert.Equal("case-surface-soft", Assert.Single(answer.Reasons).Code);
    }

    [Fact]
    public void Traverse_that_ends_hard_only_bounds_the_depth()
    {
        var answer = CaseDepth.Of([At(0.10m, 720), At(0.60m, 600)]);

        Assert.Null(answer.Depth);
        Assert.Equal(Length.Millimetres(0.60m), answer.AtLeast);
    }

    [Fact]
    public void Core_that_is_not_softer_than_450_at_three_times_the_depth_is_said() =>
        Assert.Equal("case-core-too-hard", Assert.Single(CaseDepth.Of([At(0.10m, 720), At(0.70m, 580), At(0.90m, 520), At(2.40m, 460)]).Reasons).Code);

    [Fact]
    public void Traverses_that_are_none_are_refused()
    {
        Assert.Throws<ArgumentException>("traverse", () => CaseDepth.Of([At(0.1m, 700)]));
        Assert.Throws<ArgumentException>("traverse", () => CaseDepth.Of([At(0.3m, 700), At(0.1m, 500)]));
        Assert.Throws<ArgumentException>("traverse", () => CaseDepth.Of([At(0.1m, double.NaN), At(0.3m, 500)]));
        Assert.Throws<ArgumentException>("limit", () => CaseDepth.Of([At(0.1m, 700), At(0.3m, 500)], 560));
    }

    [Theory] // ASTM A370-03a / E140 table, two copies; 550 HV by linear interpolation.
    [InlineData(40, 392)]
    [InlineData(41, 402)]
    [InlineData(42, 412)]
    [InlineData(43, 423)]
    [InlineData(44, 434)]
    [InlineData(45, 446)]
    [InlineData(46, 458)]
    [InlineData(47, 471)]
    [InlineData(48, 484)]
    [InlineData(49, 498)]
    [InlineData(50, 513)]
    [InlineData(51, 528)]
    [InlineData(52, 544)]
    [InlineData(53, 560)]
    [InlineData(54, 577)]
    [InlineData(55, 595)]
    [InlineData(56, 613)]
    [InlineData(57, 633)]
    [InlineData(58, 653)]
    [InlineData(59, 674)]
    [InlineData(60, 697)]
    [InlineData(61, 720)]
    [InlineData(62, 746)]
    [InlineData(63, 772)]
    [InlineData(64, 800)]
    [InlineData(65, 832)]
    [InlineData(66, 865)]
    [InlineData(67, 900)]
    [InlineData(68, 940)]
    [InlineData(52.375, 550)]
    public void Rockwell_and_Vickers_agree_both_ways(double rockwell, double vickers)
    {
        Assert.Equal(vickers, HardnessTable.VickersOf(rockwell), 9);
        Assert.Equal(rockwell, HardnessTable.RockwellCOf(vickers), 9);
    }

    [Theory]
    [InlineData(39.9)]
    [InlineData(68.1)]
    [InlineData(double.NaN)]
    public void Nothing_is_converted_outside_the_table(double rockwell) => Assert.Throws<ArgumentException>("rockwellC", () => HardnessTable.VickersOf(rockwell));

    private static HardnessPoint At(decimal millimetres, double vickers) => new(Length.Millimetres(millimetres), vickers);
}
