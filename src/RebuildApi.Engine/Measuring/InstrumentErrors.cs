using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>Standard uncertainties that an instrument brings (JCGM 100:2008, 4.3.7 and F.2.2.1).</summary>
internal static class InstrumentErrors
{
    private static readonly double RootThree = Math.Sqrt(3);

    /// <summary>Standard uncertainty of rounding to a step r: r/√12.</summary>
    public static double OfStep(double step) => step / Math.Sqrt(12);

    /// <summary>Standard uncertainty of a half-width a within which everything is equally likely: a/√3.</summary>
    public static double OfHalfWidth(double halfWidth) => halfWidth / RootThree;

    /// <summary>Standard uncertainty from an instrument's limit of error on a scale; 0 when it is unknown or of another dimension.</summary>
    public static double OfLimit(InstrumentState? instrument, Scale scale)
    {
        var limit = scale.Of(instrument?.LimitOfError) ?? 0;
        return instrument?.ErrorModel == ErrorModel.ExpandedK2 ? limit / 2 : OfHalfWidth(limit);
    }

    /// <summary>Standard uncertainty of the standard that an instrument was set by, on a scale; 0 when it is unknown or of another dimension.</summary>
    public static double OfReference(InstrumentState? instrument, Scale scale) => scale.Of(instrument?.ReferenceUncertainty) ?? 0;
}
