using RebuildApi.Engine.Numerics;

namespace RebuildApi.Engine.Conformity;

/// <summary>How much of one normal distribution lies beyond limits: of a single part's value, or of a whole process.</summary>
/// <param name="Below">Chance below the low limit.</param>
/// <param name="Above">Chance above the high limit.</param>
/// <param name="Capability">Cpk: distance from the mean to the nearest limit over three standard deviations, negative outside.</param>
public sealed record SpecificRisk(double Below, double Above, double Capability)
{
    /// <summary>Chance beyond either limit.</summary>
    public double Beyond => Below + Above;

    /// <summary>The risks of N(mean, deviation²) against limits.</summary>
    /// <param name="mean">Mean.</param>
    /// <param name="deviation">Standard deviation, positive.</param>
    /// <param name="low">Low limit; −∞ when there is none.</param>
    /// <param name="high">High limit; +∞ when there is none.</param>
    public static SpecificRisk Of(double mean, double deviation, double low, double high)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(deviation);
        return new SpecificRisk(
            StandardNormal.Cdf((low - mean) / deviation),
            StandardNormal.Cdf((mean - high) / deviation),
            Math.Min(mean - low, high - mean) / (3 * deviation));
    }
}
