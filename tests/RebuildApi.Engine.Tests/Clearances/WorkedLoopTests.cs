using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using static RebuildApi.Engine.Tests.Clearances.EndPlay;

namespace RebuildApi.Engine.Tests.Clearances;

/// <summary>Clearances worked by hand; computed here, no source, unless a line says otherwise.</summary>
public class WorkedLoopTests
{
    [Fact] // Sizes by TM 5-3810-294-34, table 1-4; the loop is computed here.
    public void Two_parts_at_their_own_worn_limits_have_more_play_together_than_either_limit_says()
    {
        var tight = Gap((1, 1.5478m), (-1, 0.9839m));
        var loose = Gap((1, 1.5484m), (-1, 0.9835m));
        var worn = Gap((1, 1.550m), (-1, 0.982m));

        Assert.Equal((Length.Inches(0.5639m), Length.Inches(0.5649m), Length.Inches(0.568m)), (tight, loose, worn));
        Assert.Equal(0.079m, decimal.Round((worn - loose).InMillimetres, 3));
        Assert.Equal(0.104m, decimal.Round((worn - tight).InMillimetres, 3));
    }

    [Theory] // Rail spacing 22.0, rail diameter 15.9, notch 2.0: e = Lp − (C − D), c = C − D + n − Lp.
    [InlineData(7.9, 1.8, 0.2)]
    [InlineData(6.6, 0.5, 1.5)]
    public void Interlock_plunger_of_7_9_holds_and_one_of_6_6_lets_two_gears_in(double plunger, double engaged, double clearance)
    {
        var e = GapMm((1, (decimal)plunger), (-1, 22.0m), (1, 15.9m));
        var c = GapMm((1, 22.0m), (-1, 15.9m), (1, 2.0m), (-1, (decimal)plunger));

        Assert.Equal((Mm((decimal)engaged), Mm((decimal)clearance)), (e, c));
    }

    [Fact]
    public void Cut_of_a_closing_member_opens_the_gap_and_of_an_opening_member_closes_it()
    {
        var before = GapMm((1, 62.05m), (-1, 30.10m), (-1, 28.70m));

        Assert.Equal(before + Mm(0.10m), GapMm((1, 62.05m), (-1, 30.10m), (-1, 28.60m)));
        Assert.Equal(before - Mm(0.10m), GapMm((1, 61.95m), (-1, 30.10m), (-1, 28.70m)));
    }


    private static Length Gap(params (int Sign, decimal Inches)[] members) => Sum([.. members.Select(m => (m.Sign, Length.Inches(m.Inches)))]);

    private static Length GapMm(params (int Sign, decimal Mm)[] members) => Sum([.. members.Select(m => (m.Sign, Mm(m.Mm)))]);

    private static Length Sum((int Sign, Length Of)[] members) =>
        Of(LoopValue.Sum([.. members.Select(m => TermValue.Of(new Term(new Fixed(m.Of), m.Sign), "fixed", TermValue.Exactly(m.Of)))]).Estimate.Value);
}
