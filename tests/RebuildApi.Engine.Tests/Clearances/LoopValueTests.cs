using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.TestKit;
using static RebuildApi.Engine.Tests.Clearances.EndPlay;

namespace RebuildApi.Engine.Tests.Clearances;

public class LoopValueTests
{
    private static readonly Term Opens = new(new Fixed(Length.Zero), 1);
    private static readonly Term Closes = new(new Fixed(Length.Zero), -1);

    [Fact] // Shigley's Mechanical Engineering Design, screw with three sleeves; inputs and outputs from memory of it, recomputed.
    public void Screw_with_three_sleeves_has_a_gap_of_5_thousandths_plus_minus_10_worst_case_and_6_by_root_sum_square()
    {
        var gap = LoopValue.Sum([Within(Opens, 1.750m, 0.003m), Within(Closes, 0.750m, 0.001m), Within(Closes, 0.120m, 0.005m), Within(Closes, 0.875m, 0.001m)]);

        Assert.Equal(Length.Inches(0.005m), Of(gap.Estimate.Value));
        Assert.Equal(Length.Inches(-0.005m), gap.WorstLow);
        Assert.Equal(Length.Inches(0.015m), gap.WorstHigh);
        Assert.Equal(0.006, gap.RootSumSquare!.Value / 0.0254, 12);
    }

    [Fact] // The same example: a gap of at least 0.003 in asks for a mean gap of 0.013 in, so the last sleeve becomes 0.867 in.
    public void Screw_with_three_sleeves_keeps_3_thousandths_when_the_last_sleeve_is_shortened()
    {
        var gap = LoopValue.Sum([Within(Opens, 1.750m, 0.003m), Within(Closes, 0.750m, 0.001m), Within(Closes, 0.120m, 0.005m), Within(Closes, 0.867m, 0.001m)]);

        Assert.Equal(Length.Inches(0.003m), gap.WorstLow);
    }

    [Fact] // Computed here, no source.
    public void Gear_end_play_from_drawing_values_has_its_worst_case_and_its_root_sum_square()
    {
        var gap = LoopValue.Sum([WithinMm(Opens, 62.05m, 0.03m), WithinMm(Closes, 30.10m, 0.03m), WithinMm(Closes, 3.00m, 0.02m), WithinMm(Closes, 28.70m, 0.03m)]);

        Assert.Equal(Mm(0.25m), Of(gap.Estimate.Value));
        Assert.Equal((Mm(0.14m), Mm(0.36m)), (gap.WorstLow, gap.WorstHigh));
        Assert.Equal(0.056, gap.RootSumSquare!.Value * 1000, 3);
    }

    [Fact] // JCGM 100:2008, G.4.1: the effective degrees of freedom of equal parts with 4 each are 8 for two of them.
    public void Two_equal_members_with_four_degrees_of_freedom_have_eight_together()
    {
        var member = TermValue.Exactly(Mm(1)) with { StandardUncertainty = 1e-6, DegreesOfFreedom = 4 };

        var gap = LoopValue.Sum([TermValue.Of(Opens, "a", member), TermValue.Of(Closes, "b", member)]);

        Assert.Equal(8, gap.Estimate.DegreesOfFreedom!.Value, 9);
        Assert.Equal(0.5, gap.Terms[0].Share, 9);
    }

    [Fact]
    public void Thirds_of_a_millimetre_are_rounded_once_at_the_end()
    {
        var third = new Term(new Fixed(Length.Zero), 1, 3);

        var gap = LoopValue.Sum([.. Enumerable.Repeat(TermValue.Of(third, "third", TermValue.Exactly(Mm(1))), 3)]);

        Assert.Equal(Mm(1), Of(gap.Estimate.Value));
    }

    [Fact]
    public void A_member_of_which_only_a_bound_is_known_bounds_the_gap()
    {
        var atMost = TermValue.Unknown with { Basis = EstimateBasis.Measured, High = new Exact(Mm(2)) };

        var gap = LoopValue.Sum([TermValue.Of(Opens, "a", TermValue.Exactly(Mm(3))), TermValue.Of(Closes, "b", atMost)]);

        Assert.Null(gap.Estimate.Value);
        Assert.Equal(Mm(1), Of(gap.Estimate.Low));
        Assert.Null(gap.Estimate.High);
    }

    private static TermValue Within(Term term, decimal inches, decimal halfWidth) =>
        TermValue.Of(term, "sleeve", TermValue.Within(Length.Inches(inches), Length.Inches(halfWidth)));

    private static TermValue WithinMm(Term term, decimal mm, decimal halfWidth) => TermValue.Of(term, "part", TermValue.Within(Mm(mm), Mm(halfWidth)));
}
