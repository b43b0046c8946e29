using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;

namespace RebuildApi.Engine.Tests.Mechanics;

public sealed class BearingTests
{
    /// <summary>Mechanical Engineering Design (Shigley), catalogue rating: 400 lbf, 5000 h at 1725 rev/min prints 3211 lbf (from memory of the book, recomputed).</summary>
    [Fact]
    public void Catalogue_rating_of_the_textbook() =>
        Assert.Equal(3211, BearingLife.RatingFor(400, 5000 * 1725 * 60.0, RollingElement.Ball), 0.5);

    /// <summary>ISO 281, C/P = 30.7/6.2: computed here.</summary>
    [Fact]
    public void Basic_rating_life_of_balls_and_rollers()
    {
        var balls = BearingLife.BasicRatingLife(30.7, 6.2, RollingElement.Ball);
        Assert.Equal(121.4060, balls / 1e6, 5e-5);
        Assert.Equal(1348.955, BearingLife.Hours(balls, 1500), 5e-4);
        Assert.Equal(206.9294, BearingLife.BasicRatingLife(30.7, 6.2, RollingElement.Roller) / 1e6, 5e-5);
    }

    /// <summary>ISO 281:2007 (from memory), beside the two-parameter Weibull values of the older edition, computed here.</summary>
    [Theory]
    [InlineData(0.95, 0.64, 0.61885)]
    [InlineData(0.96, 0.55, 0.53147)]
    [InlineData(0.97, 0.47, 0.43721)]
    [InlineData(0.98, 0.37, 0.33252)]
    [InlineData(0.99, 0.25, 0.20877)]
    public void Surer_bearings_live_shorter(double reliability, double factor, double weibull)
    {
        Assert.Equal(factor, BearingLife.ReliabilityFactor(reliability));
        Assert.Equal(weibull, Math.Pow(Math.Log(1 / reliability) / Math.Log(1 / 0.9), 1 / 1.5), 5e-6);
        Assert.InRange(factor, weibull, weibull + 0.05);
    }

    [Fact]
    public void Rating_and_life_are_each_others_inverse() => Gen.Select(Gen.Double[1, 1e5], Gen.Double[1, 1e4], Gen.Enum<RollingElement>()).Sample((c, p, element) =>
        Math.Abs(BearingLife.RatingFor(p, BearingLife.BasicRatingLife(c, p, element), element) / c - 1) < 1e-9);

    [Fact]
    public void Little_thrust_does_not_count_and_much_does()
    {
        Assert.Equal(1000, BearingLife.EquivalentLoad(1000, 250, 0.26, 0.56, 1.7));
        Assert.Equal(0.56 * 1000 + 1.7 * 800, BearingLife.EquivalentLoad(1000, -800, 0.26, 0.56, 1.7), 1e-9);
    }

    /// <summary>ISO 5753-1 (four public copies, majority taken).</summary>
    [Theory]
    [InlineData(10, ClearanceGroup.C2, 0, 7)]
    [InlineData(24, ClearanceGroup.C3, 13, 28)]
    [InlineData(24, ClearanceGroup.C5, 28, 48)]
    [InlineData(25, ClearanceGroup.CN, 5, 20)]
    [InlineData(30, ClearanceGroup.C4, 23, 41)]
    [InlineData(35, ClearanceGroup.CN, 6, 20)]
    [InlineData(50, ClearanceGroup.C3, 18, 36)]
    [InlineData(65, ClearanceGroup.C2, 1, 15)]
    [InlineData(65, ClearanceGroup.C5, 55, 90)]
    [InlineData(80, ClearanceGroup.C3, 25, 51)]
    [InlineData(100, ClearanceGroup.C5, 75, 120)]
    public void Clearance_group_at_a_bore(int boreMm, ClearanceGroup group, int low, int high)
    {
        var limits = InternalClearance.DeepGroove(Length.Millimetres(boreMm), group)!;
        Assert.Equal((new Exact(Length.Micrometres(low)), new Exact(Length.Micrometres(high))), (limits.Low, limits.High));
    }

    [Theory]
    [InlineData(6)]
    [InlineData(121)]
    public void No_group_is_told_outside_the_table(int boreMm) => Assert.Null(InternalClearance.DeepGroove(Length.Millimetres(boreMm), ClearanceGroup.CN));

    [Fact]
    public void Larger_groups_are_larger_at_every_bore() => Gen.Select(Gen.Int[7, 100], Gen.Int[0, 3]).Sample((bore, group) =>
    {
        var (smaller, larger) = (At(bore, group), At(bore, group + 1));
        return smaller.Low!.InSi < larger.Low!.InSi && smaller.High!.InSi < larger.High!.InSi;

        static Limits At(int bore, int group) => InternalClearance.DeepGroove(Length.Millimetres(bore), (ClearanceGroup)group)!;
    });

    [Fact]
    public void Interference_takes_its_share_of_the_clearance_and_a_loose_fit_none()
    {
        Assert.Equal(16e-6, InternalClearance.LossByInterference(20e-6), 1e-12);
        Assert.Equal(0, InternalClearance.LossByInterference(-5e-6));
    }

    /// <summary>Housing of 72 mm, 60 K warm: cast aluminium 21.5, grey iron 10.8 or 11.4 against steel 11.5 (engineering tables); figures computed here.</summary>
    [Theory]
    [InlineData(21.5, 43.2)]
    [InlineData(10.8, -3.024)]
    [InlineData(11.4, -0.432)]
    public void A_warm_aluminium_housing_lets_its_bearing_creep_and_an_iron_one_does_not(double housing, double micrometres) =>
        Assert.Equal(micrometres, InternalClearance.HousingGrowth(housing * 1e-6, 11.5e-6, 60, 0.072) * 1e6, 1e-6);

    /// <summary>Bore 80, +70 K: aluminium (23) loses 0.064, iron (10.5) gains 0.006 mm. Computed here, no source.</summary>
    [Theory]
    [InlineData(23, 0.064)]
    [InlineData(10.5, -0.006)]
    public void Bore_fit_of_a_hot_case(double housing, double millimetres) =>
        Assert.Equal(millimetres, InternalClearance.HousingGrowth(housing * 1e-6, 11.5e-6, 70, 0.080) * 1e3, 0.0005);

    /// <summary>Engineering magazine's reference article on radial ball bearings.</summary>
    [Fact]
    public void A_filling_slot_bearing_has_more_balls_and_takes_a_third_of_the_thrust()
    {
        var filling = BearingTypes.Find("filling-slot")!;
        Assert.Equal(1.0 / 3, filling.ThrustShare!.Value, 1e-12);
        Assert.Equal((1.2, 1.4), (filling.RadialShareLow, filling.RadialShareHigh));
        Assert.Equal(2, BearingTypes.Find("deep-groove")!.Directions);
    }

    /// <summary>Common practice, no source.</summary>
    [Fact]
    public void Thrust_pits_one_side_of_the_race()
    {
        Assert.Equal(1, BearingDamage.ThrustFrom(BearingRing.Inner, onOutputSide: false));
        Assert.Equal(1, BearingDamage.ThrustFrom(BearingRing.Outer, onOutputSide: true));
        Assert.Equal(-1, BearingDamage.ThrustFrom(BearingRing.Inner, onOutputSide: true));
    }
}
