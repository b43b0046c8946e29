using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>The formulas of the measuring calculations, with where they come from.</summary>
public static class MeasuringFormulas
{
    /// <summary>Uncertainty.</summary>
    public static Formula Uncertainty { get; } = new(
        "combined and expanded uncertainty", "u² = Σ u_i²; ν_eff = u⁴ / Σ (u_i⁴/ν_i); U = k·u with k = t(ν_eff, coverage)", "JCGM 100:2008, 5.1.2, 6.3 and annex G");

    /// <summary>Conformity.</summary>
    public static Formula Conformity { get; } = new(
        "conformance probability and decision rule", "p = P(low ≤ value ≤ high) with the value spread as Student's t about its estimate", "JCGM 106:2012, clauses 7 to 9");

    /// <summary>Monte Carlo.</summary>
    public static Formula MonteCarlo { get; } = new(
        "propagation of distributions", "Y = f(X₁ … X_N), drawn until twice the numerical spread lies within the tolerance", "JCGM 101:2008, clause 7");

    /// <summary>Gauge study by analysis of variance.</summary>
    public static Formula GaugeByAnova { get; } = new(
        "crossed gauge study by analysis of variance", "GRR² = EV² + AV² + INT²; TV² = GRR² + PV²", "AIAG, Measurement systems analysis, 4th edition, chapter III");

    /// <summary>Gauge study by average and range.</summary>
    public static Formula GaugeByRange { get; } = new(
        "crossed gauge study by average and range", "EV = R̄/d2; AV² = (X̄diff/d2*)² − EV²/(n·r); PV = Rp/d2*", "AIAG, Measurement systems analysis, 4th edition, chapter III");

    /// <summary>Control charts.</summary>
    public static Formula ControlChart { get; } = new(
        "control chart", "centre ± k·σ/√n, σ from ranges over d2 or deviations over c4; runs of nine on one side", "ASTM Manual 7; Nelson, Journal of Quality Technology 16, 1984, from memory");
}
