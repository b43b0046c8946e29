using RebuildApi.Contracts;

namespace RebuildApi.Engine.Fits;

/// <summary>
/// Whether a full-complement needle bearing has all its rollers: q = (Dp/2)·(2π − 2·N·asin(dr/Dp)), Dp = journal + roller diameter, is the arc left over
/// at the pitch circle. Some designs want a larger gap, so what the family says goes before this. Computed here, no source.
/// </summary>
/// <param name="Leftover">The arc left over, metres; negative when so many can't go in.</param>
/// <param name="Most">The most rollers that go in: ⌊π / asin(dr/Dp)⌋.</param>
/// <param name="Outcome">What follows.</param>
public sealed record NeedleCount(double Leftover, int Most, NeedleOutcome Outcome)
{
    /// <summary>Checks a count.</summary>
    /// <param name="journal">Diameter of the journal.</param>
    /// <param name="roller">Diameter of a roller.</param>
    /// <param name="count">Rollers counted.</param>
    /// <exception cref="ArgumentException">A diameter or the count is not positive.</exception>
    public static NeedleCount Of(Length journal, Length roller, int count)
    {
        if (journal <= Length.Zero)
            throw new ArgumentException("A journal has a diameter.", nameof(journal));
        if (roller <= Length.Zero)
            throw new ArgumentException("A roller has a diameter.", nameof(roller));
        if (count < 1)
            throw new ArgumentException("At least one roller is there to count.", nameof(count));
        var pitch = (journal + roller).InMetres;
        var half = Math.Asin(roller.InMetres / pitch);
        var leftover = pitch / 2 * (2 * Math.PI - (2 * count * half));
        var outcome = leftover < 0 ? NeedleOutcome.TooMany : leftover >= roller.InMetres ? NeedleOutcome.RollerMissing : NeedleOutcome.Complete;
        return new NeedleCount(leftover, (int)Math.Floor(Math.PI / half), outcome);
    }
}

/// <summary>What a count of rollers says.</summary>
public enum NeedleOutcome
{
    /// <summary>Not counted.</summary>
    NotAssessed,

    /// <summary>All are there: less than one roller's room is left over.</summary>
    Complete,

    /// <summary>At least one is missing.</summary>
    RollerMissing,

    /// <summary>So many can't go in: count again, or the rollers are of another size.</summary>
    TooMany,
}
