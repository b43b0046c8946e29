using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Pieces;
using RebuildApi.Engine.Selection;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Selection;

public class GuaranteeTests
{
    [Theory] // Computed here, no source: step 0.05, U 0.01.
    [InlineData(0.05, 0.03, false)]
    [InlineData(0.10, 0.08, true)]
    public void Step_of_5_hundredths_answers_a_window_of_10_always_and_one_of_5_not(double window, double guarded, bool isGuaranteed)
    {
        var high = Length.Millimetres((decimal)window - 0.01m);

        var answer = SeriesGuarantee.Of(Rings(2.35m, 2.40m, 2.45m), new GuardedWindow(Length.Millimetres(0.01m), high));

        Assert.Equal(isGuaranteed, answer.IsGuaranteed);
        Assert.Equal(Length.Millimetres((decimal)guarded), answer.GuardedWidth);
        Assert.Equal(Length.Millimetres(0.05m), answer.WidestStep);
        Assert.Equal(isGuaranteed ? 0 : 2, answer.Holes.Length);
    }

    [Fact] // Common practice, no source: all rings in a small-parts kit are one size, so a kit alone can't set end play.
    public void Kit_of_one_size_answers_only_gaps_as_wide_apart_as_the_window()
    {
        var answer = SeriesGuarantee.Of(Rings(2.40m), new GuardedWindow(Length.Millimetres(0.05m), Length.Millimetres(0.10m)));

        Assert.Equal(Length.Millimetres(0.05m), answer.To - answer.From);
    }

    [Fact]
    public void Gap_has_a_ring_exactly_when_it_is_in_range_and_in_no_hole() => Gen.Select(Gen.Int[1, 60].Array[1, 6], Gen.Int[0, 20], Gen.Int[0, 20], Gen.Int[-10, 120]).Sample(
        (sizes, low, width, gap) =>
        {
            var rings = Rings([.. sizes.Distinct().Select(s => (decimal)s)]);
            var window = new GuardedWindow(Length.Millimetres(low), Length.Millimetres(low + width));

            var answer = SeriesGuarantee.Of(rings, window);

            var without = Length.Millimetres(gap);
            var has = rings.Any(r => without - r.Thickness >= window.Low && without - r.Thickness <= window.High);
            var said = without >= answer.From && without <= answer.To && !answer.Holes.Any(h => without > h.After && without < h.Before);
            Assert.Equal(has, said);
        });

    [Fact]
    public void Guarded_window_is_what_the_rule_calls_conforming_to_the_nanometre() => Gen.Select(Gen.Long[0, 100], Gen.Long[1, 200], Gen.Int[0, 40]).Sample((low, width, u) =>
    {
        var window = Limits.Between(Length.Micrometres(low), Length.Micrometres(low + width), FamilyBuilder.Invented);
        var uncertainty = u * 1e-6;

        var guarded = GuardedWindow.Of(window, uncertainty, null, Policy.Default);

        var (first, last) = (guarded.Low!.Value, guarded.High!.Value);
        if (first > last)
        {
            Assert.NotEqual(Outcome.Conforming, Judged(window, new Length((Length.Micrometres(low).Nanometres + Length.Micrometres(low + width).Nanometres) / 2), uncertainty));
            return;
        }

        Assert.Equal(Outcome.Conforming, Judged(window, first, uncertainty));
        Assert.Equal(Outcome.Conforming, Judged(window, last, uncertainty));
        Assert.NotEqual(Outcome.Conforming, Judged(window, first - new Length(1), uncertainty));
        Assert.NotEqual(Outcome.Conforming, Judged(window, last + new Length(1), uncertainty));
    });

    [Fact]
    public void Empty_series_is_refused() => Assert.Throws<ArgumentException>("packs", () => SeriesGuarantee.Of([], new GuardedWindow(Length.Zero, Length.Zero)));

    private static Outcome Judged(Limits window, Length gap, double u) =>
        Conformance.Assess("gap", new Estimate(new Exact(gap), u, null, null, null, EstimateBasis.Measured, []), window, Policy.Default).Outcome;

    private static System.Collections.Immutable.ImmutableArray<Pack> Rings(params decimal[] millimetres) =>
        [.. millimetres.Select((t, i) => new Pack([$"r-{i}"], Length.Millimetres(t), null))];
}
