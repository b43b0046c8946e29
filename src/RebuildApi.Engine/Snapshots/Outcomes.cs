using RebuildApi.Contracts;

namespace RebuildApi.Engine.Snapshots;

/// <summary>How outcomes add up: the worst decides, and nothing unknown is ever good.</summary>
public static class Outcomes
{
    /// <summary>Nonconforming before not assessed, not assessed before inconclusive, inconclusive before conforming; not assessed when there is none.</summary>
    public static Outcome Worst(IEnumerable<Outcome> outcomes)
    {
        var worst = Outcome.NotAssessed;
        var rank = -1;
        foreach (var outcome in outcomes)
        {
            if (Rank(outcome) > rank)
                (worst, rank) = (outcome, Rank(outcome));
        }

        return worst;
    }

    /// <summary>0 for conforming, the worse the higher.</summary>
    public static int Rank(Outcome outcome) => outcome switch
    {
        Outcome.Conforming => 0,
        Outcome.Inconclusive => 1,
        Outcome.NotAssessed => 2,
        _ => 3,
    };
}
