using RebuildApi.Engine.Numerics;

namespace RebuildApi.Engine.Statistics;

/// <summary>A share counted on few cases, with the exact interval of Clopper and Pearson (Biometrika 26, 1934), which never claims too much.</summary>
/// <param name="Hits">How many.</param>
/// <param name="Of">Of how many; at least 1.</param>
/// <param name="Low">Lower end of the interval.</param>
/// <param name="High">Upper end of the interval.</param>
public sealed record Share(int Hits, int Of, double Low, double High)
{
    /// <summary>The share itself.</summary>
    public double Value => Hits / (double)Of;

    /// <summary>Counts a share.</summary>
    /// <param name="hits">0 to <paramref name="of"/>.</param>
    /// <param name="of">At least 1.</param>
    /// <param name="confidence">0..1 excluded.</param>
    public static Share Counted(int hits, int of, double confidence = 0.95)
    {
        if (of < 1 || hits < 0 || hits > of)
            throw new ArgumentOutOfRangeException(nameof(hits), hits, $"A count lies between 0 and {of}, which is at least 1.");
        if (confidence is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A confidence lies between 0 and 1.");
        var tail = (1 - confidence) / 2;
        return new Share(
            hits,
            of,
            hits == 0 ? 0 : BetaFunction.Quantile(hits, of - hits + 1, tail),
            hits == of ? 1 : BetaFunction.Quantile(hits + 1, of - hits, 1 - tail));
    }
}
