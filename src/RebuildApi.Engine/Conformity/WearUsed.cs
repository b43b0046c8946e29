using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;

namespace RebuildApi.Engine.Conformity;

/// <summary>How far a part that was read has moved from its drawing towards the limit for going back: what a rebuilder asks next after "is it good?".</summary>
internal static class WearUsed
{
    /// <summary>So many times the allowed wear is no wear: it is another part, or another size of it. Common practice, no source.</summary>
    private const double AnotherPart = 10;

    /// <summary>
    /// Room inside the drawing, or the distance past it and, where there is a limit on that side, its share of the way from the drawing to the limit:
    /// used = (value − drawing end) / (limit − drawing end).
    /// </summary>
    /// <param name="subject">The characteristic.</param>
    /// <param name="estimate">What was read.</param>
    /// <param name="drawing">Limits of a new part; none when the family gives none.</param>
    /// <param name="limits">The limits that decide.</param>
    /// <param name="scale">Of the characteristic.</param>
    /// <returns>None when there is no value or no drawing.</returns>
    public static Reason? Of(string subject, Estimate estimate, Limits? drawing, Limits limits, Scale scale)
    {
        if (drawing is null || scale.Of(estimate.Value) is not { } value)
            return null;
        if (scale.Of(drawing.Low) is { } low && value < low)
            return Past(subject, low, value, scale.Of(limits.Low), scale);
        if (scale.Of(drawing.High) is { } high && value > high)
            return Past(subject, high, value, scale.Of(limits.High), scale);
        var room = Math.Min(value - (scale.Of(drawing.Low) ?? double.NegativeInfinity), (scale.Of(drawing.High) ?? double.PositiveInfinity) - value);
        return double.IsFinite(room) ? ConformityReasons.Reason("as-drawn", subject, scale, ("room", room)) : null;
    }

    private static Reason Past(string subject, double drawing, double value, double? limit, Scale scale)
    {
        var past = ("past", Math.Abs(value - drawing));
        var used = limit is { } end && end != drawing && (end > drawing) == (value > drawing) ? (value - drawing) / (end - drawing) : double.PositiveInfinity;
        return used < AnotherPart
            ? ConformityReasons.Reason("worn-from-drawing", subject, scale, past, ("usedPercent", Math.Round(100 * used, 1)))
            : ConformityReasons.Reason("off-drawing", subject, scale, past);
    }
}
