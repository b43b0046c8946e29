using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Numerics;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Conformity;

public sealed class CharacteristicJudgeTests
{
    [Fact]
    public void A_worn_journal_is_as_thin_as_its_thinnest_plane()
    {
        var family = FamilyBuilder.Named().Part("shaft", LengthOf("journal", 24.95m, 25.00m, Statistic.Min)).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Reads("shaft", "journal", "mic-1", 24.98m, 24.90m, 24.97m).Snapshot;

        var verdict = Judge(family, snapshot, "shaft");

        Assert.Equal(Outcome.Nonconforming, verdict!.Outcome);
        Assert.Equal(new Exact(Length.Millimetres(24.90m)), verdict.Value!.Value);
    }

    [Fact]
    public void An_oval_bore_is_held_against_its_limits_at_both_ends()
    {
        var family = FamilyBuilder.Named().Part("case", LengthOf("bore", 62.00m, 62.04m, Statistic.MinAndMax)).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Reads("case", "bore", "mic-1", 62.02m, 62.09m).Snapshot;

        var verdict = Judge(family, snapshot, "case");

        Assert.Equal(Outcome.Nonconforming, verdict!.Outcome);
        Assert.Equal(["above-high-limit", "within-limits", "read-between"], verdict.Reasons.Select(r => r.Code));
        Assert.Equal(
            ("62020000", "62090000", "70000"),
            (verdict.Reasons[2].Arguments["smallestNm"], verdict.Reasons[2].Arguments["largestNm"], verdict.Reasons[2].Arguments["spreadNm"]));
    }

    // A share of two short lengths read with a coarse gauge bends within its own uncertainty (JCGM 100:2008, 5.1.2, note). The limit lies where
    // a straight line would just pass the part. Exact for X/Y with normal X and Y: P(X/Y <= c) = P(X - cY <= 0), a normal number, while Y is surely above 0.
    [Fact]
    public void A_derived_value_whose_formula_bends_is_judged_by_trials()
    {
        var (verdict, propagated, limits) = Share(0.032e-3);
        var (u, limit) = (0.032e-3 / Math.Sqrt(3), limits.High!.InSi);

        Assert.False(propagated.FirstOrderSuffices);
        Assert.True(verdict.Value!.StandardUncertainty > 1.05 * propagated.FirstOrder);
        Assert.Contains(verdict.Value.Budget, line => line.Name == "monte-carlo");
        Assert.Equal(1, verdict.Value.Budget.Sum(line => line.Share), 1e-12);
        Assert.Contains(verdict.Reasons, r => r.Code == "found-by-monte-carlo" && int.Parse(r.Arguments["trials"], CultureInfo.InvariantCulture) >= 10_000);
        Assert.Equal(StandardNormal.Cdf((limit - 1) * 0.1e-3 / (u * Math.Sqrt(1 + limit * limit))), verdict.Probability!.Value, 0.01);
        Assert.Equal(Outcome.Inconclusive, verdict.Outcome);
        Assert.Equal(
            Outcome.Conforming,
            Conformance.Assess("share", verdict.Value with { Value = new Real(1, Dimension.Ratio), StandardUncertainty = propagated.FirstOrder }, limits, Policy.Default).Outcome);
    }

    // With a divisor this doubtful the tails are so long that trials never settle.
    [Fact]
    public void Where_trials_do_not_settle_the_second_order_terms_stand_in()
    {
        var (verdict, propagated, limits) = Share(0.04e-3);

        Assert.Equal(propagated.SecondOrder, verdict.Value!.StandardUncertainty, 1e-6);
        Assert.Contains(verdict.Value.Budget, line => line.Name == "second-order");
        Assert.Equal(Outcome.Inconclusive, verdict.Outcome);
        Assert.Equal(
            Outcome.Conforming,
            Conformance.Assess("share", verdict.Value with { StandardUncertainty = propagated.FirstOrder }, limits, Policy.Default).Outcome);
    }

    /// <summary>The share of two lengths of 0.1 mm, read with a gauge of that limit of error, against a limit that a straight line would just pass.</summary>
    private static (Verdict Verdict, Propagated Propagated, Limits Limits) Share(double limitOfError)
    {
        var u = limitOfError / Math.Sqrt(3);
        var propagated = Propagation.Through(x => x[0] / x[1], [new("a", 0.1e-3, u, null), new("b", 0.1e-3, u, null)]);
        var limits = new Limits(null, new Real(1 + StandardNormal.Quantile(Policy.Default.Probability) * (propagated.FirstOrder + propagated.SecondOrder) / 2, Dimension.Ratio), null, Invented);
        var share = LengthOf("share", null, null) with
        {
            Dimension = Dimension.Ratio,
            Service = limits,
            DerivedFrom = new Named("ratio", ImmutableSortedDictionary<string, Address>.Empty.Add("numerator", new Address("", "a")).Add("denominator", new Address("", "b"))),
        };
        var family = FamilyBuilder.Named().Part("gear", share, LengthOf("a", null, null), LengthOf("b", null, null)).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer(resolutionMm: 0.000001m, limitOfErrorMm: 1000 * (decimal)limitOfError)
            .Reads("gear", "a", "mic-1", 0.1m).Reads("gear", "b", "mic-1", 0.1m).Snapshot;
        return (Judge(family, snapshot, "gear")!, propagated, limits);
    }

    [Fact]
    public void A_formula_that_is_straight_enough_needs_no_trials()
    {
        var share = LengthOf("share", null, null) with
        {
            Dimension = Dimension.Ratio,
            Service = new Limits(null, new Real(1.5, Dimension.Ratio), null, Invented),
            DerivedFrom = new Named("ratio", ImmutableSortedDictionary<string, Address>.Empty.Add("numerator", new Address("", "a")).Add("denominator", new Address("", "b"))),
        };
        var family = FamilyBuilder.Named().Part("gear", share, LengthOf("a", null, null), LengthOf("b", null, null)).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Reads("gear", "a", "mic-1", 10m).Reads("gear", "b", "mic-1", 10m).Snapshot;

        var verdict = Judge(family, snapshot, "gear")!;

        Assert.DoesNotContain(verdict.Value!.Budget, line => line.Name is "monte-carlo" or "second-order");
        Assert.DoesNotContain(verdict.Reasons, r => r.Code == "found-by-monte-carlo");
    }

    [Theory]
    [InlineData(Statistic.MinAndMax, true)]
    [InlineData(Statistic.Spread, true)]
    [InlineData(Statistic.Max, false)]
    [InlineData(Statistic.Mean, false)]
    public void Smallest_largest_and_spread_stand_by_themselves_where_one_number_does_not_say_it(Statistic report, bool stands)
    {
        var family = FamilyBuilder.Named().Part("case", LengthOf("bore", 0.00m, 62.04m, report)).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Reads("case", "bore", "mic-1", 62.02m, 62.03m, 62.01m).Snapshot;

        var extremes = Judge(family, snapshot, "case")!.Extremes;

        var (low, high, spread) = (new Exact(Length.Millimetres(62.01m)), new Exact(Length.Millimetres(62.03m)), new Exact(Length.Millimetres(0.02m)));
        Assert.Equal(stands ? new Extremes(low, high, spread) : null, extremes);
    }

    [Fact]
    public void A_part_that_only_its_drawing_knows_is_not_assessed()
    {
        var drawn = LengthOf("width", 9.8m, null) with { New = Window(9.95m, 10.05m), Unmeasured = Distribution.Rectangular };
        var family = FamilyBuilder.Named().Part("gear", drawn).Family;

        var verdict = Judge(family, SnapshotBuilder.Complete(family).Snapshot, "gear");

        Assert.Equal(Outcome.NotAssessed, verdict!.Outcome);
        Assert.Equal(EstimateBasis.Drawing, verdict.Value!.Basis);
        Assert.Equal("not-read", Assert.Single(verdict.Reasons).Code);
    }

    [Fact]
    public void Fewer_readings_than_make_a_measurement_are_not_enough()
    {
        var family = FamilyBuilder.Named().Part("gear", LengthOf("width", 9.8m, null, readings: 3)).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Reads("gear", "width", "mic-1", 10m, 10m).Snapshot;

        var verdict = Judge(family, snapshot, "gear");

        Assert.Equal(Outcome.NotAssessed, verdict!.Outcome);
        Assert.Equal(new Change("more-readings", "gear/width", new Real(1, Dimension.Count), Outcome.NotAssessed), Assert.Single(verdict.WouldChange));
    }

    [Fact]
    public void The_shop_s_own_limits_stand_before_the_family_s()
    {
        var family = FamilyBuilder.Named().Part("gear", LengthOf("width", 9.8m, null)).Family;
        var strict = Policy.Default with { Limits = [new ShopLimit("gear/width", Window(9.95m, null)!)] };
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Reads("gear", "width", "mic-1", 9.9m).Under(strict).Snapshot;

        Assert.Equal(Outcome.Nonconforming, Judge(family, snapshot, "gear")!.Outcome);
    }

    [Fact]
    public void A_characteristic_without_limits_has_no_verdict()
    {
        var family = FamilyBuilder.Named().Part("gear", LengthOf("width", null, null)).Family;

        Assert.Null(Judge(family, SnapshotBuilder.Complete(family).Snapshot, "gear"));
    }

    [Fact]
    public void The_second_of_two_like_parts_has_its_own_subject()
    {
        var family = FamilyBuilder.Named().Kind("key", LengthOf("height", 4.9m, null)).Position("keys", "key", 2).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Reads("keys-2", "height", "mic-1", 5m).Snapshot;
        var view = new UnitView(snapshot, new FamilyIndex(family));

        var verdicts = view.At("keys").Select(p => CharacteristicJudge.Judge(p, family.Kinds[0].Characteristics[0], new EstimateBook(view))!).ToArray();

        Assert.Equal(["keys/height", "keys/height#2"], verdicts.Select(v => v.Subject));
        Assert.Equal([Outcome.NotAssessed, Outcome.Conforming], verdicts.Select(v => v.Outcome));
    }

    private static Verdict? Judge(Family family, UnitSnapshot snapshot, string position)
    {
        var view = new UnitView(snapshot, new FamilyIndex(family));
        return CharacteristicJudge.Judge(view.FirstAt(position)!, view.Family.KindAt(position)!.Characteristics[0], new EstimateBook(view));
    }
}
