using System.Collections.Immutable;

namespace RebuildApi.Engine.Statistics;

/// <summary>Count, mean and standard deviation of a list of numbers, summed so that large equal digits do not hide small differences.</summary>
/// <param name="Count">n.</param>
/// <param name="Mean">Arithmetic mean.</param>
/// <param name="StandardDeviation">s with n − 1; 0 for a single value.</param>
/// <param name="LagOne">Correlation of each value with the next, Σ(xᵢ − x̄)(xᵢ₊₁ − x̄)/Σ(xᵢ − x̄)²; 0 when all are alike.</param>
public sealed record Descriptive(int Count, double Mean, double StandardDeviation, double LagOne)
{
    /// <summary>Describes at least one number.</summary>
    /// <exception cref="ArgumentException">No numbers.</exception>
    public static Descriptive Of(ImmutableArray<double> values)
    {
        if (values.IsDefaultOrEmpty)
            throw new ArgumentException("There is nothing to describe.", nameof(values));
        var n = values.Length;

        // Deviations from the first value are small and nearly exact; the mean's own rounding is taken out in the second pass.
        var origin = values[0];
        var shift = Sum(values.Select(x => x - origin)) / n;
        var deviations = values.Select(x => x - origin - shift).ToArray();
        var left = Sum(deviations);
        var squares = Sum(deviations.Select(d => d * d)) - left * left / n;
        var products = Sum(deviations.Zip(deviations.Skip(1), (a, b) => a * b));
        return new Descriptive(n, origin + shift, n == 1 ? 0 : Math.Sqrt(Math.Max(0, squares) / (n - 1)), squares > 0 ? products / squares : 0);
    }

    /// <summary>Compensated sum (Neumaier, 1974).</summary>
    internal static double Sum(IEnumerable<double> values)
    {
        var (sum, lost) = (0.0, 0.0);
        foreach (var x in values)
        {
            var next = sum + x;
            lost += Math.Abs(sum) >= Math.Abs(x) ? sum - next + x : x - next + sum;
            sum = next;
        }

        return sum + lost;
    }
}
