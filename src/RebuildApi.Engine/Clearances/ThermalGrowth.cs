using RebuildApi.Contracts;

namespace RebuildApi.Engine.Clearances;

/// <summary>How much a gap changes with temperature.</summary>
/// <param name="Change">Metres.</param>
/// <param name="StandardUncertainty">Metres, from the doubt about the expansion coefficients alone.</param>
public readonly record struct ThermalGrowth(double Change, double StandardUncertainty)
{
    /// <summary>
    /// Δg = ΔT · Σ span · α. Parts of one material share one α, so its doubt is taken once for all of them:
    /// u² = Σ over materials (ΔT · span · half-width/√3)².
    /// </summary>
    /// <param name="members">Material and signed length in metres, coefficient applied, of each member.</param>
    /// <param name="warmer">ΔT above 20 °C, kelvin.</param>
    public static ThermalGrowth Of(IEnumerable<(Material Material, double Length)> members, double warmer)
    {
        var spans = members.GroupBy(m => m.Material).Select(g => (Material: g.Key, Span: g.Sum(m => m.Length))).ToArray();
        return new ThermalGrowth(
            warmer * spans.Sum(m => m.Span * m.Material.ExpansionPerKelvin),
            Math.Sqrt(spans.Sum(m => Math.Pow(warmer * m.Span * m.Material.ExpansionHalfWidth / Math.Sqrt(3), 2))));
    }
}
