using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Fits;

/// <summary>The face of a bell housing, read with an indicator on the crank at its corners, and the shims that square it.</summary>
/// <param name="Runout">Largest minus smallest reading. Raw readings stay with it: a printed total without them can't be checked.</param>
/// <param name="Shims">Shim at each corner, in the order of the readings: largest reading − reading.</param>
/// <param name="IsWithin">Whether the runout is within the limit, the limit included.</param>
public sealed record BellHousing(Length Runout, ImmutableArray<Length> Shims, bool IsWithin)
{
    /// <summary>The fewest corners that make a face.</summary>
    public const int FewestCorners = 3;

    /// <summary>Judges a face.</summary>
    /// <param name="readings">One reading a corner.</param>
    /// <param name="limit">The largest runout allowed.</param>
    /// <exception cref="ArgumentException">Fewer than three corners, or a negative limit.</exception>
    public static BellHousing Of(ImmutableArray<Length> readings, Length limit)
    {
        if (readings.IsDefault || readings.Length < FewestCorners)
            throw new ArgumentException("A face is read at three corners or more.", nameof(readings));
        if (limit < Length.Zero)
            throw new ArgumentException("A limit of runout is not negative.", nameof(limit));
        var highest = readings.Max();
        var runout = highest - readings.Min();
        return new BellHousing(runout, [.. readings.Select(r => highest - r)], runout <= limit);
    }
}
