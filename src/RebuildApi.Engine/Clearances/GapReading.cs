using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Clearances;

/// <summary>
/// The readings of one trial assembly taken together. A gap is read at three or more equal angles and averaged; smallest, largest and
/// spread stay, since a spread says that something is tilted or warped.
/// </summary>
/// <param name="Trial">Id of the trial assembly.</param>
/// <param name="Angles">How many readings there are.</param>
/// <param name="Mean">Their mean, or none when one of them is only a bound.</param>
/// <param name="Smallest">The smallest, or none.</param>
/// <param name="Largest">The largest, or none.</param>
/// <param name="AtLeast">A gap that is surely reached on average, or none.</param>
/// <param name="AtMost">A gap that is surely not exceeded on average: 0 when all is tight; or none.</param>
public sealed record GapReading(string Trial, int Angles, Length? Mean, Length? Smallest, Length? Largest, Length? AtLeast, Length? AtMost)
{
    /// <summary>The fewest angles that make a reading of a gap.</summary>
    public const int FewestAngles = 3;

    /// <summary>Largest minus smallest.</summary>
    public Length? Spread => Largest - Smallest;

    /// <summary>Whether it was tight: no gap at all, and the shortfall unknown.</summary>
    public bool IsTight => Mean is null && AtLeast is null && AtMost <= Length.Zero;

    /// <summary>Takes the readings of a trial together.</summary>
    public static GapReading Of(TrialAssembly trial)
    {
        var valued = trial.Gap.Length > 0 && trial.Gap.All(r => r.IsValue && r.Low is not null);
        var lows = trial.Gap.Select(r => r.Low).ToImmutableArray();
        var highs = trial.Gap.Select(r => r.High).ToImmutableArray();
        return new GapReading(
            trial.Id,
            trial.Gap.Length,
            valued ? MeanOf(lows) : null,
            valued ? lows.Min() : null,
            valued ? lows.Max() : null,
            MeanOf(lows),
            MeanOf(highs));
    }

    private static Length? MeanOf(ImmutableArray<Length?> ends) => ends.Length == 0 || ends.Any(e => e is null)
        ? null
        : Ratio.Sum(ends.Select(e => (1, ends.Length, e!.Value)));
}
