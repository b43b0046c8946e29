using MathNet.Numerics.Distributions;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Engine.Statistics;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Conformity;

public sealed class SettlingTests
{
    private static readonly decimal[] Scattered = [9.804m, 9.798m, 9.803m, 9.800m, 9.806m];
    private static readonly Family Gears = FamilyBuilder.Named().Part("gear", LengthOf("width", 9.8m, null)).Family;

    [Fact]
    public void A_sure_verdict_needs_no_settling() =>
        Assert.Empty(Steps(SnapshotBuilder.Complete(Gears).Micrometer().Reads("gear", "width", "mic-1", 9.9m)));

    [Fact]
    public void One_reading_alone_cannot_be_settled_by_more_like_it()
    {
        var once = SnapshotBuilder.Complete(Gears).Micrometer().Reads("gear", "width", "mic-1", 9.802m);

        Assert.Empty(Steps(once));
    }

    [Fact]
    public void A_finer_micrometer_in_the_shop_is_offered_with_how_often_it_settles()
    {
        var step = Assert.Single(Steps(Coarse(9.81m)));

        Assert.Equal(("other-instrument", "fine", 1), (step.Code, step.Instrument, step.Readings));
        Assert.InRange(step.Settles.Value, 0.75, 0.99);
        Assert.Same(step, Settling.Cheapest([step], wanted: 0.5));
    }

    [Fact]
    public void The_cheapest_step_is_the_first_that_settles_often_enough()
    {
        var steps = Steps(Scatter());

        Assert.Equal([1, 2, 3, 5, 8, 12], steps.Select(s => s.Readings));
        var wanted = steps[3].Settles.Value;
        var cheapest = Settling.Cheapest(steps, wanted)!;
        Assert.True(cheapest.Settles.Value >= wanted);
        Assert.All(steps.TakeWhile(s => s != cheapest), s => Assert.True(s.Settles.Value < wanted));
        Assert.Equal(steps.Max(s => s.Settles.Value), Settling.Cheapest(steps, wanted: 1)!.Settles.Value);
    }

    // The claim beside the whole engine: new readings drawn by another generator, posted with the old ones, and judged.
    [Theory]
    [InlineData(2)]
    [InlineData(8)]
    public void Readings_really_settle_as_often_as_was_said(int more)
    {
        const int Trials = 600;
        var claim = Steps(Scatter()).Single(s => s.Readings == more).Settles;
        var settled = Enumerable.Range(0, Trials).Count(trial =>
        {
            var random = new Random(trial);
            var sigma = Deviation * Math.Sqrt(4 / ChiSquared.Sample(random, 4));
            var settlesOn = 9.8022 + sigma / Math.Sqrt(5) * Normal.Sample(random, 0, 1);
            var readings = Enumerable.Range(0, more).Select(_ => Math.Round((decimal)(settlesOn + sigma * Normal.Sample(random, 0, 1)), 3));
            return Judge(Scatter().Reads("gear", "width", "mic-1", [.. readings])).Outcome is Outcome.Conforming or Outcome.Nonconforming;
        });

        // Both are counts: five standard deviations of their difference.
        var rate = settled / (double)Trials;
        var deviation = Math.Sqrt(claim.Value * (1 - claim.Value) * (1.0 / Trials + 1.0 / claim.Of));
        Assert.InRange(rate, claim.Value - 5 * deviation, claim.Value + 5 * deviation);
    }

    // The same for another instrument: a true width that the coarse reading allows, read once with the fine one, which stands alone.
    [Theory]
    [InlineData(9.81)]
    [InlineData(9.80)]
    public void A_finer_instrument_really_settles_as_often_as_was_said(double read)
    {
        const int Trials = 1000;
        var coarse = Coarse((decimal)read);
        var claim = Assert.Single(Steps(coarse)).Settles;
        var known = Judge(coarse).Value!;
        var settled = Enumerable.Range(0, Trials).Count(trial =>
        {
            var random = new Random(trial);
            var width = read + known.StandardUncertainty * 1e3 * Normal.Sample(random, 0, 1);
            var shown = width + 0.002 / Math.Sqrt(3) * Normal.Sample(random, 0, 1);
            var fine = SnapshotBuilder.Complete(Gears).Micrometer("fine", 0.001m, 0.002m).Reads("gear", "width", "fine", Math.Round((decimal)shown, 3));
            return Judge(fine).Outcome is Outcome.Conforming or Outcome.Nonconforming;
        });

        // Both are counts: five standard deviations of their difference.
        var rate = settled / (double)Trials;
        var deviation = Math.Sqrt(claim.Value * (1 - claim.Value) * (1.0 / Trials + 1.0 / claim.Of));
        Assert.InRange(rate, claim.Value - 5 * deviation, claim.Value + 5 * deviation);
    }

    private static SnapshotBuilder Coarse(decimal read) =>
        SnapshotBuilder.Complete(Gears).Micrometer("coarse", 0.01m, 0.02m).Micrometer("fine", 0.001m, 0.002m).Reads("gear", "width", "coarse", read);

    private static double Deviation { get; } = Descriptive.Of([.. Scattered.Select(x => (double)x)]).StandardDeviation;

    private static SnapshotBuilder Scatter() => SnapshotBuilder.Complete(Gears).Micrometer(limitOfErrorMm: 0.002m).Reads("gear", "width", "mic-1", Scattered);

    private static System.Collections.Immutable.ImmutableArray<SettlingStep> Steps(SnapshotBuilder builder)
    {
        var view = new UnitView(builder.Snapshot, new FamilyIndex(Gears));
        return Settling.Steps(view.FirstAt("gear")!, Gears.Kinds[0].Characteristics[0], new EstimateBook(view));
    }

    private static Verdict Judge(SnapshotBuilder builder)
    {
        var view = new UnitView(builder.Snapshot, new FamilyIndex(Gears));
        return CharacteristicJudge.Judge(view.FirstAt("gear")!, Gears.Kinds[0].Characteristics[0], new EstimateBook(view))!;
    }
}
