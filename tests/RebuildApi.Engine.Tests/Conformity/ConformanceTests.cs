using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;

namespace RebuildApi.Engine.Tests.Conformity;

public sealed class ConformanceTests
{
    private static readonly Policy Guarded = Policy.Default;

    // JCGM 106:2012, clause 7, examples: the printed two digits, and Φ of the printed inputs to ten.
    [Theory]
    [InlineData(-5.47, 0.05, null, -5.40, 0.92, 0.9192433408)] // breakdown voltage, upper limit
    [InlineData(509.7, 8.6, 490.0, null, 0.99, 0.9890095474)] // burst pressure, lower limit
    [InlineData(13.6, 1.8, 12.5, 16.3, 0.66, 0.6626297865)] // oil viscosity, two limits
    public void Chance_of_conforming_is_that_of_the_published_examples(double y, double u, double? low, double? high, double printed, double exact)
    {
        var limits = new Limits(Number(low), Number(high), null, Estimates.Invented);

        var assessment = Conformance.Assess("x", Estimates.Of(new Real(y, Dimension.Ratio), u), limits, Guarded);

        Assert.Equal(exact, assessment.Probability!.Value, 1e-9);
        Assert.Equal(printed, Math.Round(assessment.Probability!.Value, 2));
    }

    // ILAC-G8:09/2019: a guard band of U = 2u leaves a risk below 2.5 % at the acceptance limit; no guard band leaves one half at the limit itself.
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(2, 1 - 0.02275013)]
    public void A_guard_band_of_twice_the_uncertainty_leaves_the_published_risk(double deviationsInside, double chance)
    {
        var limits = new Limits(null, Number(100), null, Estimates.Invented);

        Assert.Equal(chance, Conformance.Assess("x", Estimates.Of(new Real(100 - 0.5 * deviationsInside, Dimension.Ratio), 0.5), limits, Guarded).Probability!.Value, 5e-9);
    }

    // JCGM 106:2012, 8.3.3, guarded rejection of a speed: limit 100 km/h, u = 2 % of the reading, 99.9 %: printed 107 km/h.
    [Theory]
    [InlineData(106, Outcome.Inconclusive)]
    [InlineData(106.586, Outcome.Inconclusive)] // 100/(1 − 0.02·3.09) = 106.587, computed here
    [InlineData(106.588, Outcome.Nonconforming)]
    [InlineData(107, Outcome.Nonconforming)]
    public void A_speed_is_proven_too_high_from_107_on(double reading, Outcome expected)
    {
        var limits = new Limits(null, Number(100), null, Estimates.Invented);

        var assessment = Conformance.Assess("speed", Estimates.Of(new Real(reading, Dimension.Ratio), 0.02 * reading), limits, Guarded with { Probability = 0.999 });

        Assert.Equal(expected, assessment.Outcome);
    }

    // ILAC-G8:09/2019: simple acceptance runs up to 50 % at the limit; with a guard band U = 2u it runs below 2.5 %, Φ(−2) exactly at its edge.
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(2, 0.97724986805)]
    public void Risk_at_the_limit_and_at_the_guard_band_is_that_of_the_guideline(double standardUncertaintiesInside, double expected)
    {
        var limits = new Limits(null, Number(10), null, Estimates.Invented);

        var assessment = Conformance.Assess("x", Estimates.Of(new Real(10 - 0.1 * standardUncertaintiesInside, Dimension.Ratio), 0.1), limits, Guarded);

        Assert.Equal(expected, assessment.Probability!.Value, 1e-10);
    }

    [Fact]
    public void Bounds_that_contradict_each_other_are_refused() =>
        Assert.Throws<ArgumentException>(() => Conformance.Assess(
            "gap", Estimates.Between(Length.Millimetres(0.5m), Length.Millimetres(0.4m)), Estimates.Window(0, 1000), Guarded));

    [Fact]
    public void Ends_of_a_window_are_inside_at_every_nanometre()
    {
        Gen.Select(Gen.Long[-1_000_000_000_000, 1_000_000_000_000], Gen.Long[0, 5_000_000], Gen.Long[1, 5]).Sample((low, width, out_) =>
        {
            var limits = Estimates.Window(low, low + width);
            return Outcomes(limits, low, low + width).All(o => o == Outcome.Conforming)
                && Outcomes(limits, low - out_, low + width + out_).All(o => o == Outcome.Nonconforming);
        });

        static IEnumerable<Outcome> Outcomes(Limits limits, params long[] values) =>
            values.Select(v => Conformance.Assess("x", Estimates.Nanometres(v), limits, Guarded).Outcome);
    }

    [Fact]
    public void What_would_change_a_verdict_changes_it_as_it_says()
    {
        var any = Gen.Select(
            Gen.Long[-2_000_000, 2_000_000],
            Gen.OneOf(Gen.Const(0.0), Gen.Double[1e-9, 1e-3]),
            Gen.OneOf(Gen.Const((double?)null), Gen.Double[1, 40].Select(d => (double?)d)),
            Gen.Select(Gen.Long[-1_000_000, 0], Gen.Long[0, 1_000_000], Gen.Int[0, 2]),
            Gen.Select(Gen.Enum<DecisionRule>(), Gen.Double[0.6, 0.999]));
        any.Sample((value, u, freedom, w, rule) =>
        {
            var limits = Estimates.Window(w.Item3 == 1 ? null : w.Item1, w.Item3 == 2 ? null : w.Item2);
            var policy = Guarded with { Decision = rule.Item1, Probability = rule.Item2 };
            var estimate = Estimates.Nanometres(value, u, freedom);
            var before = Conformance.Assess("x", estimate, limits, policy);
            return before.WouldChange.All(change =>
            {
                var after = Conformance.Assess("x", Applied(estimate, change), limits, policy);
                return after.Outcome == change.LeadsTo && after.Outcome != before.Outcome;
            });
        }, iter: 3000);

        static Estimate Applied(Estimate estimate, Change change) => change.Code switch
        {
            "value-at-least" or "value-at-most" => estimate with { Value = change.Value },
            "uncertainty-at-most" => estimate with { StandardUncertainty = change.Value!.InSi },
            _ => throw new InvalidOperationException(change.Code),
        };
    }

    [Fact]
    public void A_tight_fit_is_below_a_window_that_asks_for_a_gap()
    {
        var window = Limits.Between(Length.Inches(0.010m), Length.Inches(0.015m), Estimates.Invented);

        var assessment = Conformance.Assess("end-play", Estimates.Between(null, Length.Zero), window, Guarded);

        Assert.Equal(Outcome.Nonconforming, assessment.Outcome);
        Assert.Equal("bound-below-low-limit", Assert.Single(assessment.Reasons).Code);
        Assert.Equal(new Change("value-at-least", "end-play", new Exact(Length.Inches(0.010m)), Outcome.Conforming), Assert.Single(assessment.WouldChange));
    }

    [Theory]
    [InlineData(null, 0.3, Outcome.Inconclusive)] // a go gauge of 0.3 mm alone says nothing of the low limit
    [InlineData(0.26, null, Outcome.Inconclusive)]
    [InlineData(0.26, 0.3, Outcome.Conforming)]
    [InlineData(0.39, null, Outcome.Nonconforming)]
    public void Go_and_no_go_gauges_decide_where_they_can(double? low, double? high, Outcome expected)
    {
        var window = Limits.Between(Length.Millimetres(0.254m), Length.Millimetres(0.381m), Estimates.Invented);

        Assert.Equal(expected, Conformance.Assess("gap", Estimates.Between(Mm(low), Mm(high)), window, Guarded).Outcome);
    }

    [Fact]
    public void Nothing_known_is_not_assessed_and_asks_for_a_reading()
    {
        var assessment = Conformance.Assess("x", Estimates.Between(null, null), Estimates.Window(0, 10), Guarded);

        Assert.Equal(Outcome.NotAssessed, assessment.Outcome);
        Assert.Equal("read-it", Assert.Single(assessment.WouldChange).Code);
    }

    [Fact]
    public void A_coarse_instrument_is_unsure_in_the_middle_of_a_narrow_window_and_condemns_nothing()
    {
        var assessment = Conformance.Assess("x", Estimates.Nanometres(500, 1e-3), Estimates.Window(0, 1000), Guarded);

        Assert.Equal(Outcome.Inconclusive, assessment.Outcome);
        Assert.Equal("uncertainty-at-most", Assert.Single(assessment.WouldChange).Code);
    }

    [Fact]
    public void Chance_grows_with_the_limits() => Gen.Select(Gen.Long[-1000, 1000], Gen.Double[1e-9, 1e-6], Gen.Long[0, 500], Gen.Long[0, 500]).Sample((v, u, a, b) =>
    {
        var narrow = Conformance.Assess("x", Estimates.Nanometres(v, u), Estimates.Window(-500, 500), Guarded).Probability;
        var wide = Conformance.Assess("x", Estimates.Nanometres(v, u), Estimates.Window(-500 - a, 500 + b), Guarded).Probability;
        return narrow <= wide;
    });

    [Fact]
    public void Guard_bands_nest() => Gen.Select(Gen.Long[-1000, 1000], Gen.Double[1e-9, 1e-6], Gen.Double[0.6, 0.99], Gen.Double[0, 0.009]).Sample((v, u, p, more) =>
    {
        var strict = Assess(p + more);
        var easy = Assess(p);
        return strict == easy || strict == Outcome.Inconclusive;

        Outcome Assess(double probability) =>
            Conformance.Assess("x", Estimates.Nanometres(v, u), Estimates.Window(-500, 500), Guarded with { Probability = probability }).Outcome;
    });

    private static Real? Number(double? value) => value is { } v ? new Real(v, Dimension.Ratio) : null;

    private static Length? Mm(double? value) => value is { } v ? Length.Millimetres((decimal)v) : null;
}
