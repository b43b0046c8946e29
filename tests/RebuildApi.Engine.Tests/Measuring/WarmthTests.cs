using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Measuring;

/// <summary>Temperatures and expansions as lines of the budget, against the worked example of JCGM 100:2008, annex H.1.</summary>
public sealed class WarmthTests
{
    private const decimal EndGauge = 50.000623m;

    // H.1: a 50 mm end gauge of 11.5e-6/°C at 19.9 °C; the difference of temperatures lies within ±0.05 °C, that of the coefficients within ±1e-6/°C. The guide
    // prints 16.6 nm and 2.9 nm for the two.
    [Fact]
    public void Temperature_and_coefficient_bring_the_published_components()
    {
        var known = Read(EndGauge, 19.9, null, null, new Material("steel", FamilyBuilder.Words("steel"), 11.5e-6, 0, FamilyBuilder.Invented), 0.05);
        var unsure = Read(EndGauge, 19.9, null, null, new Material("steel", FamilyBuilder.Words("steel"), 11.5e-6, 1e-6, FamilyBuilder.Invented), null);

        Assert.Equal(16.6e-9, Line(known, "temperature"), 0.05e-9);
        Assert.Equal(2.9e-9, Line(unsure, "expansion"), 0.05e-9);
        Assert.All(new[] { known, unsure }, e => Assert.Equal(1, e.Budget.Sum(l => l.Share), 1e-12));
    }

    // H.1.7: at the reference temperature itself the coefficient has no first-order share; the product of both uncertainties is printed as 11.7 nm, from
    // u(δα) = 0.58e-6/°C and u(θ) = 0.41 °C.
    [Fact]
    public void At_the_reference_temperature_the_published_second_order_term_is_left()
    {
        var estimate = Read(EndGauge, 20, null, null, new Material("steel", FamilyBuilder.Words("steel"), 0, 1e-6, FamilyBuilder.Invented), 0.41 * Math.Sqrt(3));

        Assert.Equal(11.7e-9, Line(estimate, "expansion"), 0.2e-9);
        Assert.Equal(11.835e-9, Line(estimate, "expansion"), 0.005e-9); // unrounded, computed here
    }

    [Fact]
    public void A_steel_instrument_as_warm_as_a_steel_part_reads_right()
    {
        var steel = new Material("steel", FamilyBuilder.Words("steel"), 11.5e-6, 0, FamilyBuilder.Invented);

        var together = Read(50m, 30, null, (11.5e-6, 0), steel, 1);

        Assert.Equal(new Exact(Length.Millimetres(50m)), together.Value);
        Assert.DoesNotContain(together.Budget, l => l.Name is "temperature" or "instrument-temperature");
    }

    [Fact]
    public void An_instrument_warmer_than_the_part_reads_too_little_and_both_temperatures_count()
    {
        var steel = new Material("steel", FamilyBuilder.Words("steel"), 11.5e-6, 1e-6, FamilyBuilder.Invented);

        var apart = Read(50m, 20, 30, (11.5e-6, 2e-6), steel, 0.5);

        // 50 mm · 11.5e-6/K · 10 K = 5.75 µm; temperatures 50 mm · 11.5e-6/K · 0.5 K/√3; its coefficient 50 mm · 2e-6/K/√3 · √(10² + 0.5²/3) K.
        Assert.Equal(new Exact(Length.Millimetres(50.00575m)), apart.Value);
        Assert.Equal(0.165988e-6, Line(apart, "temperature"), 1e-12);
        Assert.Equal(0.165988e-6, Line(apart, "instrument-temperature"), 1e-12);
        Assert.Equal(0.577591e-6, Line(apart, "instrument-expansion"), 1e-12);
    }

    [Fact]
    public void A_worse_thermometer_never_makes_a_reading_surer() => Gen.Select(Gen.Double[-20, 60], Gen.Double[-20, 60], Gen.Double[0, 5], Gen.Double[0, 5]).Sample((part, scale, a, b) =>
    {
        var steel = new Material("steel", FamilyBuilder.Words("steel"), 11.5e-6, 1e-6, FamilyBuilder.Invented);
        var (better, worse) = (Read(50m, part, scale, (11.5e-6, 1e-6), steel, Math.Min(a, b)), Read(50m, part, scale, (11.5e-6, 1e-6), steel, Math.Max(a, b)));
        return better.StandardUncertainty <= worse.StandardUncertainty * (1 + 1e-12);
    }, iter: 200);

    [Fact]
    public void What_all_readings_share_cancels_in_their_spread()
    {
        var steel = new Material("steel", FamilyBuilder.Words("steel"), 11.5e-6, 1e-6, FamilyBuilder.Invented);
        var taken = SnapshotBuilder.Taken(null) with { Temperature = 303.15, TemperatureHalfWidth = 1 };
        var measurement = new Measurement("m", "gear", 1, "runout", [SnapshotBuilder.Millimetres(50m), SnapshotBuilder.Millimetres(50m)], taken, null);

        Assert.DoesNotContain(ReadingsEstimate.Of(measurement, Dimension.Length, Statistic.Spread, null, steel).Budget, l => l.Name is "expansion" or "temperature");
    }

    private static double Line(Estimate estimate, string name) => estimate.Budget.Single(l => l.Name == name).StandardUncertainty;

    private static Estimate Read(decimal mm, double part, double? instrument, (double PerKelvin, double HalfWidth)? scale, Material material, double? halfWidth)
    {
        var gauge = new InstrumentState("mic-1", "outside-micrometer", new Exact(Length.Micrometres(1m)), null, ErrorModel.Rectangular, null)
        {
            ExpansionPerKelvin = scale?.PerKelvin,
            ExpansionHalfWidth = scale?.HalfWidth,
        };
        var taken = SnapshotBuilder.Taken("mic-1") with { Temperature = part + 273.15, InstrumentTemperature = instrument + 273.15, TemperatureHalfWidth = halfWidth };
        return ReadingsEstimate.Of(new Measurement("m", "gear", 1, "length", [SnapshotBuilder.Millimetres(mm)], taken, null), Dimension.Length, Statistic.Mean, gauge, material);
    }
}
