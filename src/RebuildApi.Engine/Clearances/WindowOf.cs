using RebuildApi.Contracts;

namespace RebuildApi.Engine.Clearances;

/// <summary>The window of a clearance: the shop's own before the family's, and what is wanted inside it.</summary>
public static class WindowOf
{
    /// <summary>The window that counts.</summary>
    /// <exception cref="ArgumentException">It is not one of lengths.</exception>
    public static Limits Loop(ClearanceLoop loop, Policy policy)
    {
        var window = policy.Limits.LastOrDefault(l => l.Subject == loop.Id)?.Limits ?? loop.Window;
        if (window.Low is Real || window.High is Real)
            throw new ArgumentException($"The window of {loop.Id} is not one of lengths.", nameof(loop));
        return window;
    }

    /// <summary>The wanted gap: the target, else the middle of the window, else its one end.</summary>
    public static Length Target(Limits window) => window switch
    {
        { Target: Exact target } => target.Value,
        { Low: Exact low, High: Exact high } => new Length(low.Value.Nanometres + ((high.Value.Nanometres - low.Value.Nanometres) / 2)),
        { Low: Exact low } => low.Value,
        _ => ((Exact)window.High!).Value,
    };

    /// <summary>How much a gap must change to come into the window; zero inside it, ends included.</summary>
    public static Length ToEnter(Limits window, Length gap)
    {
        if (window.Low is Exact low && gap < low.Value)
            return low.Value - gap;
        return window.High is Exact high && gap > high.Value ? high.Value - gap : Length.Zero;
    }
}
