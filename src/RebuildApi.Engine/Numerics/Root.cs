namespace RebuildApi.Engine.Numerics;

/// <summary>Roots of functions of one variable.</summary>
internal static class Root
{
    /// <summary>The root of an increasing function between two ends, to the last bit that a double can hold. Bisection: slow, and never wrong.</summary>
    public static double OfIncreasing(Func<double, double> function, double low, double high)
    {
        while (true)
        {
            var middle = low + (high - low) / 2;
            if (middle <= low || middle >= high)
                return middle;
            if (function(middle) < 0)
                low = middle;
            else
                high = middle;
        }
    }
}
