using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Quantities;

namespace RebuildApi.Engine.Tests.Quantities;

public sealed class QuantityTextTests
{
    [Theory]
    [InlineData("0.0001", "in", 2_540)]
    [InlineData("0.087", "in", 2_209_800)]
    [InlineData("87", "thou", 2_209_800)]
    [InlineData("62.05", "mm", 62_050_000)]
    [InlineData("6.205e1", "mm", 62_050_000)]
    [InlineData("15", "um", 15_000)]
    [InlineData("-0.02", "mm", -20_000)]
    [InlineData("0.000", "in", 0)]
    public void A_length_is_read_to_the_nanometre(string value, string unit, long nanometres) =>
        Assert.Equal(new Exact(new Length(nanometres)), QuantityText.Read(value, unit, Dimension.Length).Quantity);

    [Theory]
    [InlineData("NaN", "mm", "not-a-number")]
    [InlineData("1,5", "mm", "not-a-number")]
    [InlineData("1.", "mm", "not-a-number")]
    [InlineData("", "mm", "not-a-number")]
    [InlineData("0x10", "mm", "not-a-number")]
    [InlineData(" 1", "mm", "not-a-number")]
    [InlineData("1e999", "mm", "not-a-number")]
    [InlineData("1e300", "mm", "out-of-range")]
    [InlineData("1e-40", "mm", "too-many-digits")]
    [InlineData("0.0000001", "mm", "too-many-digits")]
    [InlineData("1000001", "mm", "out-of-range")]
    [InlineData("1", "furlong", "unknown-unit")]
    [InlineData("1", "MM", "unknown-unit")]
    [InlineData("1", "N", "wrong-dimension")]
    public void A_length_that_cannot_be_kept_exactly_is_refused(string value, string unit, string code)
    {
        var problem = QuantityText.Read(value, unit, Dimension.Length).Problem;
        Assert.Equal(code, problem!.Code);
        Assert.NotEmpty(problem.Allowed);
    }

    [Fact]
    public void Every_whole_nanometre_survives_the_round_trip_through_millimetres() =>
        Gen.Long[-QuantityText.Longest.Nanometres, QuantityText.Longest.Nanometres].Sample(nm =>
        {
            var text = new Length(nm).InMillimetres.ToString(System.Globalization.CultureInfo.InvariantCulture);
            return QuantityText.Read(text, "mm", Dimension.Length).Quantity == new Exact(new Length(nm));
        });

    /// <summary>NIST SP 811 (2008) Appendix B.8, factors to seven figures; the exact ones follow from the definitions of inch, pound and g_n.</summary>
    [Theory]
    [InlineData("lbf", Dimension.Force, 4.4482216152605)]
    [InlineData("kgf", Dimension.Force, 9.80665)]
    [InlineData("ft·lbf", Dimension.Torque, 1.3558179483314004)]
    [InlineData("in·lbf", Dimension.Torque, 0.1129848290276167)]
    [InlineData("kgf·m", Dimension.Torque, 9.80665)]
    [InlineData("ozf·in", Dimension.Torque, 0.00706155181422604)]
    [InlineData("lb", Dimension.Mass, 0.45359237)]
    [InlineData("L", Dimension.Volume, 1e-3)]
    [InlineData("mL", Dimension.Volume, 1e-6)]
    [InlineData("US pt", Dimension.Volume, 4.73176473e-4)]
    [InlineData("US qt", Dimension.Volume, 9.46352946e-4)]
    [InlineData("°", Dimension.Angle, Math.PI / 180)]
    public void Conversion_factors_are_those_of_NIST_SP_811(string unit, Dimension dimension, double factor) =>
        Assert.Equal(factor, QuantityText.Read("1", unit, dimension).Quantity!.InSi, factor * 1e-12);

    // The same appendix as printed: lbf 4.448 222 E+00, lbf·ft 1.355 818 E+00, lbf·in 1.129 848 E-01.
    [Theory]
    [InlineData("lbf", Dimension.Force, 4.448222, 5e-7)]
    [InlineData("ft·lbf", Dimension.Torque, 1.355818, 5e-7)]
    [InlineData("in·lbf", Dimension.Torque, 0.1129848, 5e-8)]
    public void Conversion_factors_round_to_the_printed_seven_figures(string unit, Dimension dimension, double printed, double half) =>
        Assert.Equal(printed, QuantityText.Read("1", unit, dimension).Quantity!.InSi, half);

    // The reciprocal, shown to a reader who asks for imperial units: 1 N·m = 0.737 562 149 277 265 lbf·ft.
    [Fact]
    public void A_newton_metre_is_shown_as_three_quarters_of_a_pound_foot() =>
        Assert.Equal(0.737562149277265, ((RealUnit)UnitCatalogue.Find("ft·lbf", Dimension.Torque)!).FromSi(1), 1e-14);

    // No pressure is measured in a gearbox, so the service takes none; the units library that it converts by has the published factor
    // (NIST SP 811 B.8: psi 6.894 757 E+03; exactly lbf/in²).
    [Fact]
    public void A_pound_per_square_inch_of_the_units_library_is_the_published_one()
    {
        Assert.Equal(6894.757, UnitsNet.Pressure.FromPoundsForcePerSquareInch(1).Pascals, 5e-4);
        Assert.Equal(6894.757293168361, UnitsNet.Pressure.FromPoundsForcePerSquareInch(1).Pascals, 1e-9);
    }

    [Fact]
    public void Every_unit_gives_back_what_it_took() => Assert.All(
        UnitCatalogue.All.OfType<RealUnit>(),
        unit => Gen.Double[-1e4, 1e4].Sample(x => Math.Abs(unit.FromSi(unit.ToSi(x)) - x) <= 1e-9));

    /// <summary>NIST SP 811 B.8: t/°C = (t/°F − 32)/1.8; SP 330: T/K = t/°C + 273.15.</summary>
    [Fact]
    public void Sixty_eight_degrees_fahrenheit_is_the_reference_temperature_of_ISO_1() =>
        Assert.Equal(293.15, QuantityText.Read("68", "°F", Dimension.Temperature).Quantity!.InSi, 1e-9);

    [Fact]
    public void Every_unit_is_found_by_each_of_its_names() => Assert.All(
        UnitCatalogue.All,
        unit => Assert.All([unit.Ucum, unit.Symbol, .. unit.Words], name => Assert.Same(unit, UnitCatalogue.Find(name, unit.Dimension))));

    [Fact]
    public void A_length_is_shown_in_both_systems() =>
        Assert.Equal("0.381 mm (0.0150 in)", QuantityWords.Both(Length.Inches(0.015m)));

    [Fact]
    public void A_small_uncertainty_is_shown_to_two_digits() =>
        Assert.Equal("0.0012 mm (0.000047 in)", QuantityWords.Both(new Length(1_191)));
}
