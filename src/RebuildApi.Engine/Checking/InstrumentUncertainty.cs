using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;

namespace RebuildApi.Engine.Checking;

/// <summary>What one reading by an instrument leaves open: its step and its limit of error together (JCGM 100:2008, 4.3.7 and F.2.2.1).</summary>
public static class InstrumentUncertainty
{
    /// <summary>Standard uncertainty of one reading: √(r²/12 + u(limit)²), in nanometres for lengths, in SI for anything else.</summary>
    /// <returns>Null when the instrument measures another dimension.</returns>
    public static double? Of(InstrumentState instrument, Dimension dimension)
    {
        var scale = new Scale(dimension);
        return scale.Of(instrument.Resolution) is { } step
            ? double.Hypot(InstrumentErrors.OfStep(step), InstrumentErrors.OfLimit(instrument, scale))
            : null;
    }

    /// <summary>Standard uncertainty of a value of which only its last digit is known to count: digit/√12; none for a count, which is exact.</summary>
    /// <param name="lastDigit">One unit of the last digit, on the scale.</param>
    /// <param name="dimension">What it is a quantity of.</param>
    public static double OfLastDigit(double lastDigit, Dimension dimension) => dimension == Dimension.Count ? 0 : InstrumentErrors.OfStep(lastDigit);
}
