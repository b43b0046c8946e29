using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Measuring;

/// <summary>Worked examples of JCGM 100:2008 (Guide to the expression of uncertainty in measurement).</summary>
public sealed class PublishedUncertaintyTests
{
    private static readonly double RootThree = Math.Sqrt(3);

    // Annex H.1, end gauge calibration. l = ls + d − ls·(δα·θ + αs·δθ), lengths in nm, temperatures in °C.
    private static readonly ImmutableArray<FormulaInput> EndGauge =
    [
        new("standard", 50_000_623, 25, 18),
        new("comparisons", 215, 5.8, 24),
        new("comparator random", 0, 3.9, 5),
        new("comparator systematic", 0, 6.7, 8),
        new("expansion", 11.5e-6, 2e-6 / RootThree, null),
        new("temperature", -0.1, Math.Sqrt(0.2 * 0.2 + 0.25 / 2), null),
        new("expansion difference", 0, 1e-6 / RootThree, 50),
        new("temperature difference", 0, 0.05 / RootThree, 2),
    ];

    [Fact]
    public void End_gauge_has_the_published_length_and_components()
    {
        var result = Propagation.Through(EndGaugeLength, EndGauge);

        Assert.Equal(50_000_838, result.Value, 0.5);
        Assert.Equal(25, Line(result, "standard"), 0.5);
        Assert.Equal(2.9, Line(result, "expansion difference"), 0.05);
        Assert.Equal(16.6, Line(result, "temperature difference"), 0.05);
        Assert.DoesNotContain(result.Budget, l => l.Name is "expansion" or "temperature");
    }

    [Fact]
    public void End_gauge_comparison_combines_to_the_published_component()
    {
        ImmutableArray<Contribution> lines = [new("d", 5.8, 24, 0), new("d1", 3.9, 5, 0), new("d2", 6.7, 8, 0)];

        Assert.Equal(9.7, Budget.Combined(lines), 0.05);

        // The guide prints 25.6, from its rounded 9.7; the unrounded component gives 25.447.
        Assert.Equal(25.447, Budget.EffectiveDegreesOfFreedom(lines)!.Value, 5e-4);
    }

    [Fact]
    public void End_gauge_has_the_published_uncertainty_and_degrees_of_freedom()
    {
        var result = Propagation.Through(EndGaugeLength, EndGauge);
        var expanded = ExpandedUncertainty.Of(result.FirstOrder, result.DegreesOfFreedom, 0.99);

        Assert.Equal(32, result.FirstOrder, 0.5);
        Assert.Equal(31.663879, result.FirstOrder, 5e-6);
        Assert.Equal(16.7519, result.DegreesOfFreedom!.Value, 5e-5);
        Assert.Equal(16, expanded.DegreesOfFreedom);
        Assert.Equal(2.92, expanded.Factor, 0.005);
        Assert.Equal(2.92078162, expanded.Factor, 5e-9);

        // The guide prints 93 nm from u = 32; unrounded u gives 92.48.
        Assert.Equal(93, Math.Round(expanded.Factor * 32));
        Assert.Equal(92.48, expanded.Uncertainty, 0.005);

        // JCGM 101:2008, 9.5, prints 745..931 nm for this budget, again from u = 32.
        Assert.Equal(745, result.Value - 50_000_000 - expanded.Uncertainty, 1.0);
        Assert.Equal(931, result.Value - 50_000_000 + expanded.Uncertainty, 1.0);

        // A trap: Welch–Satterthwaite with the printed u = 32 gives 17.47 (computed here), which would be cut down to 17 and not to the published 16.
        Assert.Equal(17.47, result.DegreesOfFreedom.Value * Math.Pow(32 / result.FirstOrder, 4), 0.01);
    }

    [Fact]
    public void End_gauge_needs_its_second_order_terms()
    {
        var result = Propagation.Through(EndGaugeLength, EndGauge);

        Assert.Equal(34, result.SecondOrder, 0.5);
        Assert.Equal(33.807, result.SecondOrder, 5e-4);

        // H.1.7 prints the two terms that are added, 11.7 and 1.7 nm.
        Assert.Equal(Math.Sqrt(11.7 * 11.7 + 1.7 * 1.7), Math.Sqrt(result.SecondOrder * result.SecondOrder - result.FirstOrder * result.FirstOrder), 0.05);
        Assert.False(result.FirstOrderSuffices);
    }

    // G.4.1, example: Y = b·X1·X2·X3 with 10, 5 and 15 observations of 0.25, 0.57 and 0.82 %.
    [Fact]
    public void Product_of_three_has_the_published_degrees_of_freedom_and_is_not_cut_below_them()
    {
        ImmutableArray<Contribution> lines = [new("x1", 0.25, 9, 0), new("x2", 0.57, 4, 0), new("x3", 0.82, 14, 0)];

        var u = Budget.Combined(lines);
        var expanded = ExpandedUncertainty.Of(u, Budget.EffectiveDegreesOfFreedom(lines));

        Assert.Equal(1.03, u, 0.005);
        Assert.Equal(19.0, Budget.EffectiveDegreesOfFreedom(lines)!.Value, 0.05);
        Assert.Equal(19, expanded.DegreesOfFreedom);
        Assert.Equal(2.093024, expanded.Factor, 5e-7);
        Assert.Equal(2.2, expanded.Uncertainty, 0.05);
        Assert.Equal(18.99874, Budget.EffectiveDegreesOfFreedom(lines)!.Value, 5e-6); // a plain floor would make it 18
        Assert.Equal(2.15470, expanded.Uncertainty, 5e-6);
    }

    // 4.3.3: a mass of 1 000.000 325 g with 240 µg at three standard deviations is u = 80 µg, 80e-9 of the value.
    [Fact]
    public void Three_standard_deviations_give_back_the_published_uncertainty_of_a_mass()
    {
        var stated = new Limits(new Real(1.000000325 - 240e-9, Dimension.Mass), new Real(1.000000325 + 240e-9, Dimension.Mass), null, FamilyBuilder.Invented);
        var mass = FamilyBuilder.LengthOf("mass", null, null) with { Dimension = Dimension.Mass, New = stated, Unmeasured = Distribution.Normal };
        var family = FamilyBuilder.Named().Part("weight", mass).Family;

        var estimate = new EstimateBook(new UnitView(SnapshotBuilder.Complete(family).Snapshot, new FamilyIndex(family))).Of(new Address("weight", "mass"));

        Assert.Equal(80e-9, estimate.StandardUncertainty, 1e-14);
        Assert.Equal(80e-9, estimate.StandardUncertainty / estimate.Value!.InSi, 0.5e-9);
    }

    // 4.3.4: a resistor of 10.000 742 Ω, ±129 µΩ at 99 %, is u = 50 µΩ, 5.0e-6 of the value.
    [Fact]
    public void A_stated_confidence_gives_back_the_published_standard_uncertainty()
    {
        var u = 129e-6 / ExpandedUncertainty.Of(1, null, 0.99).Factor;

        Assert.Equal(50e-6, u, 0.5e-6);
        Assert.Equal(5.0e-6, u / 10.000742, 0.05e-6);
    }

    // 4.3.7 and 4.3.9 of the guide, 6.4.6 of its first supplement: rectangular a/√3, triangular a/√6, arcsine a/√2; each density's own deviation.
    [Fact]
    public void A_half_width_is_divided_by_the_published_divisors()
    {
        Assert.Equal(1 / RootThree, new RectangularInput(-1, 1).StandardUncertainty, 1e-12);
        Assert.Equal(1 / Math.Sqrt(6), new TriangularInput(-1, 1).StandardUncertainty, 1e-12);
        Assert.Equal(1 / Math.Sqrt(2), new ArcsineInput(-1, 1).StandardUncertainty, 1e-12);
    }

    // 4.3.7, example 2, and 5.1.5: 0.928 571 V with a = 14e-6 of reading + 2e-6 · 1 V, and 12 µV of type A.
    [Fact]
    public void A_voltmeter_s_limits_combine_with_its_repeatability_as_published()
    {
        var a = 14e-6 * 0.928571 + 2e-6;
        ImmutableArray<Contribution> lines = [new("type A", 12e-6, null, 0), new("limits", a / RootThree, null, 0)];

        Assert.Equal(15e-6, a, 0.5e-6);
        Assert.Equal(8.7e-6, lines[1].StandardUncertainty, 0.05e-6);
        Assert.Equal(15e-6, Budget.Combined(lines), 0.5e-6);
        Assert.Equal(14.82, Budget.Combined([new("type A", 12, null, 0), new("limits", 8.7, null, 0)]), 0.005); // from the rounded components, computed here
        Assert.Equal(16e-6, Budget.Combined(lines) / 0.928571, 0.5e-6);
    }

    private static double EndGaugeLength(double[] x) => x[0] + x[1] + x[2] + x[3] - x[0] * (x[6] * x[5] + x[4] * x[7]);

    private static double Line(Propagated result, string name) => result.Budget.Single(l => l.Name == name).StandardUncertainty;
}
