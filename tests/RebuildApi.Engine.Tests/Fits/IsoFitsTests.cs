using RebuildApi.Contracts;
using RebuildApi.Engine.Fits;

namespace RebuildApi.Engine.Tests.Fits;

public class IsoFitsTests
{
    [Theory] // ISO 286-1, standard tolerances, micrometres: read in three copies that agree.
    [InlineData(3, 4, 6, 10, 14, 25, 40, 60)]
    [InlineData(6, 5, 8, 12, 18, 30, 48, 75)]
    [InlineData(10, 6, 9, 15, 22, 36, 58, 90)]
    [InlineData(18, 8, 11, 18, 27, 43, 70, 110)]
    [InlineData(30, 9, 13, 21, 33, 52, 84, 130)]
    [InlineData(50, 11, 16, 25, 39, 62, 100, 160)]
    [InlineData(80, 13, 19, 30, 46, 74, 120, 190)]
    [InlineData(120, 15, 22, 35, 54, 87, 140, 220)]
    [InlineData(180, 18, 25, 40, 63, 100, 160, 250)]
    [InlineData(250, 20, 29, 46, 72, 115, 185, 290)]
    public void Standard_tolerances_IT5_to_IT11_are_those_of_the_table(int upTo, params int[] micrometres)
    {
        var size = Length.Millimetres(upTo);

        Assert.Equal(micrometres.Select(m => Length.Micrometres(m)), Enumerable.Range(5, 7).Select(grade => StandardTolerances.Of(size, grade)));
    }

    [Theory] // ISO 286-1, fundamental deviations, micrometres: read in three copies that agree.
    [InlineData(3, -6, -2, 0, 2, 4, 6)]
    [InlineData(10, -13, -5, 1, 6, 10, 15)]
    [InlineData(30, -20, -7, 2, 8, 15, 22)]
    [InlineData(50, -25, -9, 2, 9, 17, 26)]
    [InlineData(120, -36, -12, 3, 13, 23, 37)]
    [InlineData(250, -50, -15, 4, 17, 31, 50)]
    public void Fundamental_deviations_of_shafts_are_those_of_the_table(int upTo, int f, int g, int k, int m, int n, int p)
    {
        var size = Length.Millimetres(upTo);

        Assert.Equal(Um(f, g), (IsoFits.Shaft(size, "f7").Upper, IsoFits.Shaft(size, "g6").Upper));
        Assert.Equal(Um(k, m), (IsoFits.Shaft(size, "k6").Lower, IsoFits.Shaft(size, "m6").Lower));
        Assert.Equal(Um(n, p), (IsoFits.Shaft(size, "n6").Lower, IsoFits.Shaft(size, "p6").Lower));
    }

    [Theory] // Computed from the tables of ISO 286-1; least and most clearance, negative is interference.
    [InlineData(30, "H7", "g6", 7, 41)]
    [InlineData(30, "H7", "k6", -15, 19)]
    [InlineData(30, "H7", "p6", -35, -1)]
    [InlineData(60, "H7", "n6", -39, 10)]
    [InlineData(100, "H8", "f7", 36, 125)]
    public void Worked_fits_have_their_least_and_most_clearance(int size, string hole, string shaft, int least, int most)
    {
        var fit = IsoFits.Of(Length.Millimetres(size), hole, shaft);

        Assert.Equal(Um(least, most), (fit.LeastClearance, fit.MostClearance));
        Assert.DoesNotContain("memory", fit.Shaft.Source.Citation, StringComparison.Ordinal);
    }

    [Theory] // ISO 286-2, from memory: the delta rule of holes gives the printed limits.
    [InlineData(40, "K7", -18, 7)]
    [InlineData(40, "M7", -25, 0)]
    [InlineData(40, "N7", -33, -8)]
    [InlineData(40, "P7", -42, -17)]
    [InlineData(30, "K8", -23, 10)]
    [InlineData(80, "K6", -15, 4)]
    [InlineData(72, "J7", -12, 18)]
    [InlineData(300, "M6", -41, -9)]
    [InlineData(2, "K7", -10, 0)]
    [InlineData(40, "N9", -62, 0)]
    public void Delta_rule_gives_the_limits_of_holes(int size, string hole, int lower, int upper)
    {
        var zone = IsoFits.Hole(Length.Millimetres(size), hole);

        Assert.Equal(Um(lower, upper), (zone.Lower, zone.Upper));
    }

    [Fact] // The purpose of the delta rule: K7/h6 clears and interferes as H7/k6 does.
    public void Shaft_basis_fit_is_the_same_as_its_hole_basis_fit()
    {
        foreach (var letter in new[] { "k", "m", "n", "p", "r", "s" })
        {
            foreach (var size in new[] { 5, 12, 25, 47, 72, 110, 170, 240 })
            {
                var holeBasis = IsoFits.Of(Length.Millimetres(size), "H7", letter + "6");
                var shaftBasis = IsoFits.Of(Length.Millimetres(size), letter.ToUpperInvariant() + "7", "h6");

                Assert.Equal((holeBasis.LeastClearance, holeBasis.MostClearance), (shaftBasis.LeastClearance, shaftBasis.MostClearance));
            }
        }
    }

    [Fact] // ISO 286-1: steps are over and up to and including.
    public void Size_of_30_belongs_to_the_step_up_to_30_and_a_nanometre_more_to_the_next()
    {
        Assert.Equal(Length.Micrometres(21), StandardTolerances.Of(Length.Millimetres(30), 7));
        Assert.Equal(Length.Micrometres(25), StandardTolerances.Of(Length.Millimetres(30) + new Length(1), 7));
    }

    [Theory] // i = 0.45·D^(1/3) + 0.001·D with IT7 = 16i, IT8 = 25i: the table is rounded, so the formula is not the table.
    [InlineData(3, 7, 1.7320508, 16, 8.67, 10)]
    [InlineData(10, 7, 7.7459667, 16, 14.37, 15)]
    [InlineData(10, 8, 7.7459667, 25, 22.45, 22)]
    public void Generating_formula_is_never_what_is_given(int upTo, int grade, double mean, int units, double formula, int table)
    {
        var i = (0.45 * Math.Cbrt(mean)) + (0.001 * mean);

        Assert.Equal(formula, units * i, 2);
        Assert.Equal(Length.Micrometres(table), StandardTolerances.Of(Length.Millimetres(upTo), grade));
    }

    [Theory] // Known misprints in copies of the table: IT9 at 3-6 is 30 and not 20; m by formula at 6-10 is 5.39 and in the table 6; g at 30-50 is 9.
    [InlineData(6, "h9", -30, 0)]
    [InlineData(10, "m5", 6, 12)]
    [InlineData(50, "g5", -20, -9)]
    public void Misprints_and_formulas_are_not_taken_over(int size, string shaft, int lower, int upper)
    {
        var zone = IsoFits.Shaft(Length.Millimetres(size), shaft);

        Assert.Equal(Um(lower, upper), (zone.Lower, zone.Upper));
    }

    [Fact]
    public void Symmetrical_class_lies_half_on_either_side() =>
        Assert.Equal((new Length(-6_500), new Length(6_500)), (IsoFits.Shaft(Length.Millimetres(25), "js6").Lower, IsoFits.Hole(Length.Millimetres(25), "JS6").Upper));

    [Fact]
    public void Value_from_memory_says_so() =>
        Assert.Contains("memory", IsoFits.Shaft(Length.Millimetres(400), "g6").Source.Citation, StringComparison.Ordinal);

    [Theory]
    [InlineData("7")]
    [InlineData("H")]
    [InlineData("Q7")]
    [InlineData("h7")]
    [InlineData("H19")]
    [InlineData("J9")]
    public void Class_that_is_no_hole_of_the_tables_is_refused(string tolerance) =>
        Assert.ThrowsAny<ArgumentException>(() => IsoFits.Hole(Length.Millimetres(30), tolerance));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(501)]
    public void Size_outside_the_tables_is_refused(int size) => Assert.Throws<ArgumentException>("nominal", () => IsoFits.Shaft(Length.Millimetres(size), "h6"));

    private static (Length, Length) Um(int a, int b) => (Length.Micrometres(a), Length.Micrometres(b));
}
