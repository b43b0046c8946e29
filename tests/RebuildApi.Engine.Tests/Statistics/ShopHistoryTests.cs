using System.Collections.Immutable;
using RebuildApi.Engine.Statistics;

namespace RebuildApi.Engine.Tests.Statistics;

/// <summary>Invented histories of the shop; expected figures computed here, no source.</summary>
public sealed class ShopHistoryTests
{
    [Fact]
    public void A_bench_that_reads_right_raises_no_alarm() =>
        Assert.DoesNotContain(BiasWatch.Follow([1, -1, 0.5, -0.5, 1, -1], sigma: 1), p => p.IsAlarm);

    [Fact]
    public void A_bench_that_drifts_by_a_standard_deviation_and_a_half_is_caught_by_the_average_before_any_single_reading_is()
    {
        var points = BiasWatch.Follow([.. Enumerable.Repeat(1.5, 12)], sigma: 1);

        // z = 1.5(1 − 0.8ⁱ) passes 3·√((1/9)(1 − 0.64ⁱ)) first at the fifth reading: 1.0085 against 0.9448.
        Assert.Equal(4, points.IndexOf(points.First(p => p.IsAlarm)));
        Assert.Equal(1.0085, points[4].Average, 5e-5);
        Assert.Equal(0.9448, points[4].Limit, 5e-5);
    }

    [Fact]
    public void Wear_of_incoming_parts_is_told_with_how_many_there_were()
    {
        var wear = WearDistribution.Of([9.9, 9.8, 9.7, 9.6, 9.5], low: 9.65, high: null);

        Assert.Equal(9.7, wear.Quantiles[0.5], 1e-12);
        Assert.Equal(9.52, wear.Quantiles[0.05], 1e-12);
        Assert.Equal((2, 5), (wear.BeyondLimit!.Hits, wear.BeyondLimit.Of));
    }

    [Fact]
    public void A_tighter_limit_is_proposed_where_the_comebacks_lie()
    {
        var history = History(20, _ => 9.9, _ => false).AddRange(History(10, i => 9.70 + 0.001 * i, i => i < 8));

        var proposal = LimitProposal.Tighter(history, LimitSide.Low)!;

        Assert.Equal(9.708, proposal.Limit, 1e-9);
        Assert.Equal((8, 8, 0, 22), (proposal.Beyond.Hits, proposal.Beyond.Of, proposal.Within.Hits, proposal.Within.Of));
        Assert.True(proposal.PValue < 0.001);
    }

    [Fact]
    public void Three_comebacks_among_eight_parts_are_too_few_to_move_a_limit() =>
        Assert.Null(LimitProposal.Tighter(History(8, i => 9.7 + 0.01 * i, i => i is 0 or 1 or 5), LimitSide.Low));

    [Fact]
    public void A_looser_limit_is_proposed_only_where_parts_at_the_limit_do_well()
    {
        var good = History(200, i => 9.7 + 0.001 * i, _ => false);
        var few = History(20, i => 9.7 + 0.001 * i, _ => false);

        var proposal = LimitProposal.Looser(good, LimitSide.Low, 9.7, acceptable: 0.10)!;

        Assert.Equal(9.661, proposal.Limit, 1e-9);
        Assert.Equal(40, proposal.Beyond.Of);
        Assert.Null(LimitProposal.Looser(few, LimitSide.Low, 9.7, acceptable: 0.10));
    }

    private static ImmutableArray<ServiceHistory> History(int count, Func<int, double> value, Func<int, bool> cameBack) =>
        [.. Enumerable.Range(0, count).Select(i => new ServiceHistory(value(i), cameBack(i)))];
}
