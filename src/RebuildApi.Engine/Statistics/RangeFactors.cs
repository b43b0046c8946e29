using RebuildApi.Engine.Numerics;

namespace RebuildApi.Engine.Statistics;

/// <summary>Factors between the range or deviation of small normal samples and σ, for samples of 2 to 10.</summary>
internal static class RangeFactors
{
    // Mean and standard deviation of the range of n standard normal values: the usual control chart table (ASTM Manual 7, from memory; recomputed).
    private static readonly double[] D2 = [1.128379, 1.692569, 2.058751, 2.325929, 2.534413, 2.704357, 2.847201, 2.970026, 3.077505];
    private static readonly double[] D3 = [0.852502, 0.888368, 0.879808, 0.864082, 0.848040, 0.833205, 0.819831, 0.807834, 0.797051];

    // √(d2² + d3²): the factor for a single range (AIAG MSA, d2* with one subgroup).
    public static double OfOneRange(int n) => Math.Sqrt(Of(D2, n) * Of(D2, n) + Of(D3, n) * Of(D3, n));

    /// <summary>d2: mean range over σ.</summary>
    public static double Mean(int n) => Of(D2, n);

    /// <summary>d3: standard deviation of the range over σ.</summary>
    public static double Deviation(int n) => Of(D3, n);

    /// <summary>c4 = √(2/(n − 1))·Γ(n/2)/Γ((n − 1)/2): mean of s over σ.</summary>
    public static double MeanOfDeviation(int n) => Math.Sqrt(2.0 / (n - 1)) * Math.Exp(GammaFunction.Log(n / 2.0) - GammaFunction.Log((n - 1) / 2.0));

    private static double Of(double[] table, int n) => n is >= 2 and <= 10
        ? table[n - 2]
        : throw new ArgumentOutOfRangeException(nameof(n), n, "Ranges are used for samples of 2 to 10.");
}
