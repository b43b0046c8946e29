using RebuildApi.Engine.Numerics;

namespace RebuildApi.Engine.Conformity;

/// <summary>
/// Risks of accepting and rejecting over all parts of a known process (JCGM 106:2012, 9.5): true values η spread as N(process), readings as
/// N(η, u). Plain numbers: the caller keeps the unit.
/// </summary>
/// <param name="Conformance">Chance that a part of the process is within its limits.</param>
/// <param name="Acceptance">Chance that a part is accepted.</param>
/// <param name="FalseAccept">Global consumer's risk: chance of a part beyond its limits and accepted.</param>
/// <param name="FalseReject">Global producer's risk: chance of a part within its limits and rejected.</param>
public sealed record GlobalRisk(double Conformance, double Acceptance, double FalseAccept, double FalseReject)
{
    private const double Reach = 10;
    private const int PanelsPerDeviation = 8;

    /// <summary>Chance that an accepted part is beyond its limits.</summary>
    public double FalseAcceptOfAccepted => Acceptance == 0 ? 0 : FalseAccept / Acceptance;

    /// <summary>The risks of an acceptance interval.</summary>
    /// <param name="processMean">Mean of the process.</param>
    /// <param name="processDeviation">Standard deviation of the process, positive.</param>
    /// <param name="uncertainty">Standard uncertainty of a reading, positive.</param>
    /// <param name="low">Low limit; −∞ when there is none.</param>
    /// <param name="high">High limit; +∞ when there is none.</param>
    /// <param name="acceptLow">Lowest reading accepted.</param>
    /// <param name="acceptHigh">Highest reading accepted.</param>
    /// <exception cref="ArgumentOutOfRangeException">A deviation that is not positive.</exception>
    public static GlobalRisk Of(
        double processMean, double processDeviation, double uncertainty, double low, double high, double acceptLow, double acceptHigh)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(processDeviation);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(uncertainty);
        var (from, to) = (processMean - Reach * processDeviation, processMean + Reach * processDeviation);
        var accepted = new AcceptedShare(processMean, processDeviation, uncertainty, acceptLow, acceptHigh);
        var outside = accepted.Between(from, Math.Min(low, to)) + accepted.Between(Math.Max(high, from), to);
        var inside = accepted.Between(Math.Max(low, from), Math.Min(high, to));
        var conformance = StandardNormal.Cdf((high - processMean) / processDeviation) - StandardNormal.Cdf((low - processMean) / processDeviation);
        return new GlobalRisk(conformance, outside + inside, outside, conformance - inside);
    }

    /// <summary>∫ φ(η)·P(accepted | η) dη over a stretch, by Gauss's five points on panels much finer than either deviation.</summary>
    private sealed record AcceptedShare(double Mean, double Deviation, double Uncertainty, double Low, double High)
    {
        private static readonly (double At, double Weight)[] Points = FivePoints();

        public double Between(double from, double to)
        {
            if (from >= to)
                return 0;
            var panels = (int)Math.Ceiling((to - from) / Math.Min(Deviation, Uncertainty) * PanelsPerDeviation);
            var half = (to - from) / panels / 2;
            var sum = 0.0;
            for (var panel = 0; panel < panels; panel++)
            {
                var middle = from + (2 * panel + 1) * half;
                foreach (var (at, weight) in Points)
                    sum += weight * Density(middle + half * at);
            }

            return sum * half;
        }

        private double Density(double value) => StandardNormal.Density((value - Mean) / Deviation) / Deviation
            * (StandardNormal.Cdf((High - value) / Uncertainty) - StandardNormal.Cdf((Low - value) / Uncertainty));

        /// <summary>Gauss–Legendre, five points (Abramowitz and Stegun 25.4.29, closed form).</summary>
        private static (double At, double Weight)[] FivePoints()
        {
            var (near, far) = (Math.Sqrt(5 - 2 * Math.Sqrt(10.0 / 7)) / 3, Math.Sqrt(5 + 2 * Math.Sqrt(10.0 / 7)) / 3);
            var (heavy, light) = ((322 + 13 * Math.Sqrt(70)) / 900, (322 - 13 * Math.Sqrt(70)) / 900);
            return [(0, 128.0 / 225), (near, heavy), (-near, heavy), (far, light), (-far, light)];
        }
    }
}
