using System.Collections.Immutable;

namespace RebuildApi.Engine.Statistics;

/// <summary>A part that went back into service and what became of it.</summary>
/// <param name="Value">Its reading at the rebuild.</param>
/// <param name="CameBack">Whether it came back for this.</param>
public sealed record ServiceHistory(double Value, bool CameBack);

/// <summary>Which side a limit guards.</summary>
public enum LimitSide
{
    /// <summary>Values must not be lower.</summary>
    Low,

    /// <summary>Values must not be higher.</summary>
    High,
}

/// <summary>
/// A limit that the shop's own history speaks for. It is a proposal with the counts behind it: a person decides, and nothing is applied by itself.
/// </summary>
/// <param name="Limit">The limit proposed.</param>
/// <param name="Beyond">Comebacks among parts that the proposed limit would have turned away.</param>
/// <param name="Within">Comebacks among parts that it would have passed.</param>
/// <param name="PValue">Chance of such a difference if the limit made none, with the number of limits tried allowed for (Fisher's exact test, Bonferroni).</param>
public sealed record LimitProposal(double Limit, Share Beyond, Share Within, double PValue)
{
    /// <summary>The tighter limit that the history speaks for most clearly.</summary>
    /// <param name="history">Parts that were passed.</param>
    /// <param name="side">Which side the limit guards.</param>
    /// <param name="significance">How unlikely chance must be.</param>
    /// <returns>Null when no limit stands out: too few parts, or no difference.</returns>
    public static LimitProposal? Tighter(ImmutableArray<ServiceHistory> history, LimitSide side, double significance = 0.05)
    {
        var candidates = history.Select(h => h.Value).Distinct().Order().ToArray();
        var tried = Math.Max(1, candidates.Length - 1);
        var best = candidates
            .Select(limit => Split(history, side, limit, tried))
            .OfType<LimitProposal>()
            .Where(p => p.Beyond.Value > p.Within.Value)
            .MinBy(p => p.PValue);
        return best?.PValue <= significance ? best : null;
    }

    /// <summary>
    /// Whether parts right at the present limit do well enough for it to be looser: the nearest fifth of all parts, when even the upper end
    /// of their comeback rate stays below what the shop accepts.
    /// </summary>
    /// <param name="history">Parts that were passed.</param>
    /// <param name="side">Which side the limit guards.</param>
    /// <param name="limit">The present limit.</param>
    /// <param name="acceptable">Comeback rate that the shop accepts, 0..1.</param>
    /// <returns>The limit moved out by the width of that fifth; null when the history does not carry it.</returns>
    public static LimitProposal? Looser(ImmutableArray<ServiceHistory> history, LimitSide side, double limit, double acceptable)
    {
        var nearest = history.OrderBy(h => Math.Abs(h.Value - limit)).Take(history.Length / 5).ToArray();
        var rest = history.Length - nearest.Length;
        if (nearest.Length == 0 || rest == 0)
            return null;
        var atLimit = Share.Counted(nearest.Count(h => h.CameBack), nearest.Length);
        var elsewhere = Share.Counted(history.Count(h => h.CameBack) - atLimit.Hits, rest);
        var reach = nearest.Max(h => Math.Abs(h.Value - limit));
        return atLimit.High <= acceptable && reach > 0
            ? new LimitProposal(side == LimitSide.Low ? limit - reach : limit + reach, atLimit, elsewhere, ExactTest.OneSided(atLimit, elsewhere))
            : null;
    }

    private static LimitProposal? Split(ImmutableArray<ServiceHistory> history, LimitSide side, double limit, int tried)
    {
        var beyond = history.Where(h => side == LimitSide.Low ? h.Value < limit : h.Value > limit).ToArray();
        if (beyond.Length == 0 || beyond.Length == history.Length)
            return null;
        var beyondShare = Share.Counted(beyond.Count(h => h.CameBack), beyond.Length);
        var kept = Share.Counted(history.Count(h => h.CameBack) - beyondShare.Hits, history.Length - beyondShare.Of);
        return new LimitProposal(limit, beyondShare, kept, Math.Min(1, tried * ExactTest.OneSided(beyondShare, kept)));
    }
}
