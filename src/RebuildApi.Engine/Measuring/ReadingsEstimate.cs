using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>Readings by themselves, without a unit around them, to a value and its standard uncertainty.</summary>
public static class ReadingsEstimate
{
    /// <summary>The very calculation that verdicts rest on.</summary>
    /// <param name="measurement">The readings and how they were taken.</param>
    /// <param name="dimension">What they are readings of.</param>
    /// <param name="report">Which statistic is wanted.</param>
    /// <param name="instrument">The instrument, or none.</param>
    /// <param name="material">What the part is made of, or none when its temperature does not matter.</param>
    /// <param name="study">What a gauge study found of the instrument here, or none.</param>
    /// <returns>Basis <see cref="EstimateBasis.None"/> when no reading is of the dimension.</returns>
    public static Estimate Of(
        Measurement measurement, Dimension dimension, Statistic report, InstrumentState? instrument, Material? material, GaugeCapability? study = null) =>
        MeasuredEstimate.Of(
            ReadingSet.Of([new TakenWith(measurement, instrument, study)], new Scale(dimension), material, OverdueRule.Flag), report);
}
