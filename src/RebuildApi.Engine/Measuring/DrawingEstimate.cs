using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>A part that was not measured, as its drawing has it: the middle of the new limits, spread as the family says.</summary>
internal static class DrawingEstimate
{
    /// <summary>
    /// Half-width a over the divisor of the spread: √3 rectangular, √6 triangular (JCGM 100:2008, 4.3.7 and 4.3.9), 3 normal.
    /// Null when the family lets nothing be assumed, or the drawing has only one end.
    /// </summary>
    public static Estimate? Of(Limits? whenNew, Distribution spread, Scale scale)
    {
        if (spread == Distribution.None || scale.Of(whenNew?.Low) is not { } low || scale.Of(whenNew?.High) is not { } high)
            return null;
        var divisor = spread switch
        {
            Distribution.Triangular => Math.Sqrt(6),
            Distribution.Normal => 3,
            _ => Math.Sqrt(3),
        };
        var uncertainty = (high - low) / 2 / divisor * scale.InSi;
        var middle = scale.Quantity(low + (high - low) / 2);
        return Budget.Estimate(middle, EstimateBasis.Drawing, [new Contribution("drawing", uncertainty, null, 0)], whenNew!.Low, whenNew.High);
    }
}
