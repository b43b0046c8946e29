using System.Collections.Immutable;

namespace RebuildApi.Engine.Statistics;

/// <summary>
/// Readings of one shared reference part, week by week at one bench, watched for a drift by an exponentially weighted moving average
/// (Roberts, Technometrics 1, 1959): zᵢ = λxᵢ + (1 − λ)zᵢ₋₁, limits ±Lσ√(λ/(2 − λ)·(1 − (1 − λ)²ⁱ)).
/// </summary>
public static class BiasWatch
{
    /// <summary>Follows the bias of a bench.</summary>
    /// <param name="errors">Reading minus reference value, in the order of time.</param>
    /// <param name="sigma">Standard deviation of one such reading, from a gauge study; positive.</param>
    /// <param name="weight">λ, 0..1; 0.2 follows a slow drift.</param>
    /// <param name="width">L, in standard deviations; 3 is usual.</param>
    public static ImmutableArray<BiasPoint> Follow(ImmutableArray<double> errors, double sigma, double weight = 0.2, double width = 3)
    {
        if (sigma <= 0)
            throw new ArgumentOutOfRangeException(nameof(sigma), sigma, "A standard deviation is positive.");
        if (weight is not (> 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(weight), weight, "A weight lies above 0 and up to 1.");
        var points = ImmutableArray.CreateBuilder<BiasPoint>();
        var (average, forgotten) = (0.0, 1.0);
        foreach (var error in errors)
        {
            average = weight * error + (1 - weight) * average;
            forgotten *= (1 - weight) * (1 - weight);
            var limit = width * sigma * Math.Sqrt(weight / (2 - weight) * (1 - forgotten));
            points.Add(new BiasPoint(average, limit, Math.Abs(average) > limit));
        }

        return points.ToImmutable();
    }
}

/// <summary>The bias of a bench at one time.</summary>
/// <param name="Average">The weighted average of its errors: the bias to take out.</param>
/// <param name="Limit">How far from 0 chance alone would carry it.</param>
/// <param name="IsAlarm">Whether it is farther.</param>
public sealed record BiasPoint(double Average, double Limit, bool IsAlarm);
