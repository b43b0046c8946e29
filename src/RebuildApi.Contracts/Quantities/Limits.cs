using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>
/// The window a value must lie in, ends included. Either end may be absent (no limit on that side); the target, where there is one, is the
/// value that a rebuilder sets when there is a choice.
/// </summary>
public sealed record Limits
{
    /// <summary>A window that is not upside down.</summary>
    /// <param name="low">The lowest value allowed, or none.</param>
    /// <param name="high">The highest value allowed, or none.</param>
    /// <param name="target">The value wanted, or none.</param>
    /// <param name="source">Where the numbers come from.</param>
    /// <exception cref="ArgumentException">No end at all, ends or target out of order, or mixed dimensions.</exception>
    [JsonConstructor]
    public Limits(Quantity? low, Quantity? high, Quantity? target, Source source)
    {
        ArgumentNullException.ThrowIfNull(source);
        if (low is null && high is null)
            throw new ArgumentException("A window needs at least one end.", nameof(low));
        RequireOrder(low, high, nameof(high));
        RequireOrder(low, target, nameof(target));
        RequireOrder(target, high, nameof(target));
        (Low, High, Target, Source) = (low, high, target, source);
    }

    /// <summary>The lowest value allowed, included; none when there is no limit below.</summary>
    public Quantity? Low { get; }

    /// <summary>The highest value allowed, included; none when there is no limit above.</summary>
    public Quantity? High { get; }

    /// <summary>The value wanted, if one is.</summary>
    public Quantity? Target { get; }

    /// <summary>Where the numbers come from.</summary>
    public Source Source { get; }

    /// <summary>A window of lengths with both ends.</summary>
    public static Limits Between(Length low, Length high, Source source, Length? target = null) =>
        new(new Exact(low), new Exact(high), target is { } t ? new Exact(t) : null, source);

    /// <summary>A length that must not be undercut.</summary>
    public static Limits AtLeast(Length low, Source source) => new(new Exact(low), null, null, source);

    /// <summary>A length that must not be exceeded.</summary>
    public static Limits AtMost(Length high, Source source) => new(null, new Exact(high), null, source);

    /// <summary>Whether an exact length lies in the window, ends included.</summary>
    /// <exception cref="InvalidOperationException">The window is not one of lengths.</exception>
    public bool Contains(Length value) => (Low is null || ToLength(Low) <= value) && (High is null || value <= ToLength(High));

    private static Length ToLength(Quantity end) =>
        end is Exact exact ? exact.Value : throw new InvalidOperationException($"The window is one of {end.Kind}, not of lengths.");

    private static void RequireOrder(Quantity? lower, Quantity? upper, string parameter)
    {
        if (lower is null || upper is null)
            return;
        if (lower.Kind != upper.Kind)
            throw new ArgumentException($"A window mixes {lower.Kind} with {upper.Kind}.", parameter);
        var inOrder = (lower, upper) is (Exact a, Exact b) ? a.Value <= b.Value : lower.InSi <= upper.InSi;
        if (!inOrder)
            throw new ArgumentException("A window is upside down: low <= target <= high.", parameter);
    }
}
