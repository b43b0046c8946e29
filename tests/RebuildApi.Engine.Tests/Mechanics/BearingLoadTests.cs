using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;

namespace RebuildApi.Engine.Tests.Mechanics;

public sealed class BearingLoadTests
{
    /// <summary>f0·Fa/C0, e and Y of single-row deep-groove ball bearings, X 0.56 (ISO 281:2007; read in a public copy of a bearing catalogue).</summary>
    [Theory]
    [InlineData(0.172, 0.19, 2.30)]
    [InlineData(0.345, 0.22, 1.99)]
    [InlineData(0.689, 0.26, 1.71)]
    [InlineData(1.03, 0.28, 1.55)]
    [InlineData(1.38, 0.30, 1.45)]
    [InlineData(2.07, 0.34, 1.31)]
    [InlineData(3.45, 0.38, 1.15)]
    [InlineData(5.17, 0.42, 1.04)]
    [InlineData(6.89, 0.44, 1.00)]
    public void Load_factors_of_deep_groove_bearings(double load, double e, double y)
    {
        var factors = BearingLoadFactors.DeepGroove(load * 1000, 13_000, 13);
        Assert.Equal((e, 0.56, y), (Math.Round(factors.E, 9), factors.X, Math.Round(factors.Y, 9)));
    }

    /// <summary>
    /// Mechanical Engineering Design (Shigley), ball bearing with combined load: Fa 400, Fr 500, C0 4450, C 7900 lbf at 720 rev/min prints e 0.285,
    /// Y 1.527, P 890.8 lbf and 16 150 h (from memory of the book). Its table by Fa/C0 is the standard's at f0 = 12.3, rounded.
    /// </summary>
    [Fact]
    public void Combined_load_of_the_textbook()
    {
        var factors = BearingLoadFactors.DeepGroove(400, 4450);
        var load = BearingLife.EquivalentLoad(500, 400, factors.E, factors.X, factors.Y);
        Assert.Equal(0.285, factors.E, 0.001);
        Assert.Equal(1.527, factors.Y, 0.002);
        Assert.Equal(890.8, load, 1.0);
        Assert.Equal(16150, BearingLife.Hours(BearingLife.BasicRatingLife(7900, load, RollingElement.Ball), 720), 50.0);
    }

    /// <summary>X 0.4, Y = 0.4·cot α, e = 1.5·tan α (ISO 281): pairs of e and Y as catalogues of tapered bearings print them, to their digits (from memory).</summary>
    [Theory]
    [InlineData(0.28, 2.1)]
    [InlineData(0.31, 1.9)]
    [InlineData(0.35, 1.7)]
    [InlineData(0.37, 1.6)]
    [InlineData(0.40, 1.5)]
    [InlineData(0.43, 1.4)]
    public void Load_factors_of_tapered_bearings_follow_from_e(double e, double y)
    {
        var factors = BearingLoadFactors.Tapered(e);
        Assert.Equal((0.4, y), (factors.X, Math.Round(factors.Y, 1)));
        Assert.Equal(1000 / (2 * factors.Y), BearingLoadFactors.InducedThrust(-1000, factors.Y), 1e-9);
    }

    [Fact]
    public void More_thrust_never_makes_a_deep_groove_bearing_live_longer() => Gen.Select(Gen.Double[0, 20_000], Gen.Double[0, 5_000], Gen.Double[1, 20_000]).Sample(
        (axial, more, radial) => Load(axial + more, radial) >= Load(axial, radial) - 1e-6);

    /// <summary>Half the static rating (bearing catalogues; from memory); a third of that with a filling slot (engineering magazine's reference article).</summary>
    [Fact]
    public void Thrust_capacity_by_type()
    {
        Assert.Equal(8_000, BearingTypes.ThrustCapacity(BearingTypes.Find("deep-groove")!, 16_000));
        Assert.Equal(8_000 / 3.0, BearingTypes.ThrustCapacity(BearingTypes.Find("filling-slot")!, 16_000)!.Value, 1e-9);
        Assert.Equal(0, BearingTypes.ThrustCapacity(BearingTypes.Find("needle")!, 16_000));
        Assert.Null(BearingTypes.ThrustCapacity(BearingTypes.Find("tapered")!, 16_000));
    }

    /// <summary>ISO 5753-1, cylindrical roller bearings: CN and C3 up to 65 mm read in one public copy, the others from memory.</summary>
    [Theory]
    [InlineData(24, ClearanceGroup.CN, 20, 45)]
    [InlineData(30, ClearanceGroup.C3, 35, 60)]
    [InlineData(40, ClearanceGroup.CN, 25, 50)]
    [InlineData(40, ClearanceGroup.C3, 45, 70)]
    [InlineData(50, ClearanceGroup.CN, 30, 60)]
    [InlineData(50, ClearanceGroup.C3, 50, 80)]
    [InlineData(65, ClearanceGroup.CN, 40, 70)]
    [InlineData(65, ClearanceGroup.C3, 60, 90)]
    [InlineData(80, ClearanceGroup.C2, 10, 45)]
    [InlineData(100, ClearanceGroup.C4, 105, 140)]
    public void Clearance_group_of_a_cylindrical_roller_bearing(int boreMm, ClearanceGroup group, int low, int high)
    {
        var limits = InternalClearance.CylindricalRoller(Length.Millimetres(boreMm), group)!;
        Assert.Equal((new Exact(Length.Micrometres(low)), new Exact(Length.Micrometres(high))), (limits.Low, limits.High));
    }

    /// <summary>ISO 5753-1, over 100 to 120 mm (from memory).</summary>
    [Fact]
    public void Clearance_group_of_the_largest_deep_groove_bearings() =>
        Assert.Equal(new Exact(Length.Micrometres(66)), InternalClearance.DeepGroove(Length.Millimetres(120), ClearanceGroup.C3)!.High);

    [Fact]
    public void Larger_groups_of_rollers_are_larger_at_every_bore() => Gen.Select(Gen.Int[11, 100], Gen.Int[0, 3]).Sample((bore, group) =>
    {
        var (smaller, larger) = (At(bore, group), At(bore, group + 1));
        return smaller.Low!.InSi < larger.Low!.InSi && smaller.High!.InSi < larger.High!.InSi;

        static Limits At(int bore, int group) => InternalClearance.CylindricalRoller(Length.Millimetres(bore), (ClearanceGroup)group)!;
    });

    private static double Load(double axial, double radial)
    {
        var factors = BearingLoadFactors.DeepGroove(axial, 16_000);
        return BearingLife.EquivalentLoad(radial, axial, factors.E, factors.X, factors.Y);
    }
}
