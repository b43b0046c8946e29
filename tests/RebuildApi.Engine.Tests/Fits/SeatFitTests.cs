using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Fits;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Fits;

public class SeatFitTests
{
    private const double Warm60 = ThermalGap.Reference + 60;

    [Theory] // Coefficients by Callister's appendix (356.0 cast 21.5, grey iron 11.4, another table 10.8; steel 11.5); clearance changes computed here.
    [InlineData(21.5, 43.2)]
    [InlineData(10.8, -3.024)]
    [InlineData(11.4, -0.432)]
    public void Clearance_of_a_72_bore_on_a_steel_ring_changes_with_60_kelvin(double housing, double micrometres)
    {
        var seat = SeatFit.Of(Size(72), Size(72), Of(housing), Of(11.5), Warm60, mustBeTight: false);

        Assert.Equal(micrometres, seat.Change * 1e6, 9);
    }

    [Theory] // Computed here, no source: bore 80, 70 K, case of aluminium 23 or iron 10.5 against steel 11.5.
    [InlineData(23, 0.064)]
    [InlineData(10.5, -0.006)]
    public void Interference_of_an_80_bore_falls_in_aluminium_and_grows_in_iron(double housing, double millimetres)
    {
        var seat = SeatFit.Of(Size(80), Size(80), Of(housing), Of(11.5), ThermalGap.Reference + 70, mustBeTight: true);

        Assert.Equal(millimetres, seat.Change * 1000, 3);
    }

    [Fact] // Computed here, no source.
    public void Ring_that_is_tight_cold_may_creep_in_a_hot_aluminium_case()
    {
        var seat = SeatFit.Of(Size(79.980m), Size(80.000m), Of(23), Of(11.5), ThermalGap.Reference + 70, mustBeTight: true);

        Assert.Equal(Length.Millimetres(-0.020m), seat.Clearance);
        Assert.True(seat.ThereClearance > Length.Zero);
        Assert.Equal("fit-ring-may-creep", Assert.Single(seat.Reasons).Code);
    }

    [Fact]
    public void Ring_in_an_iron_case_stays_tight()
    {
        var seat = SeatFit.Of(Size(79.980m), Size(80.000m), Of(10.5), Of(11.5), ThermalGap.Reference + 70, mustBeTight: true);

        Assert.Equal("fit-ring-stays-tight", Assert.Single(seat.Reasons).Code);
    }

    [Fact]
    public void Doubt_of_the_sizes_makes_a_fit_near_zero_as_likely_loose_as_tight()
    {
        var unsure = Size(80) with { StandardUncertainty = 2e-6 };

        var seat = SeatFit.Of(unsure, unsure, Of(11.5), Of(11.5), ThermalGap.Reference, mustBeTight: true);

        Assert.Equal(0.5, seat.LooseChance, 12);
    }

    [Fact]
    public void Missing_size_and_a_temperature_that_is_none_are_refused()
    {
        Assert.Throws<ArgumentException>("bore", () => SeatFit.Of(TermValue.Unknown, Size(80), Of(23), Of(11.5), Warm60, false));
        Assert.Throws<ArgumentException>("inner", () => SeatFit.Of(Size(80), Size(0), Of(23), Of(11.5), Warm60, false));
        Assert.Throws<ArgumentException>("kelvin", () => SeatFit.Of(Size(80), Size(80), Of(23), Of(11.5), double.NaN, false));
    }

    private static Estimate Size(decimal millimetres) => TermValue.Exactly(Length.Millimetres(millimetres));

    private static Material Of(double expansion) => new("m", FamilyBuilder.Words("m"), expansion * 1e-6, 0, FamilyBuilder.Invented);
}
