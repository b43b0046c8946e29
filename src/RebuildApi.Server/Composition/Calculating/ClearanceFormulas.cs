using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>The formulas of the clearance calculations, with where they come from.</summary>
public static class ClearanceFormulas
{
    private const string Cuts = "A cut is a proposal until it is made and the part is read again; metal that is off does not come back.";

    /// <summary>A loop.</summary>
    public static Formula Loop { get; } = new(
        "clearance from its members", "gap = Σ coefficient·dimension; worst case ± Σ half-width; statistical ± √Σ half-width²; u² = Σ u_i²", "JCGM 100:2008, 5.1.2; tolerance stacks of any machine-design text");

    /// <summary>A loop at temperature.</summary>
    public static Formula Thermal { get; } = new(
        "clearance at temperature", "Δgap = ΔT·Σ coefficient·length·α, ΔT from 20 °C; one α, and one doubt about it, for each material", "ISO 1 for 20 °C; linear expansion",
        "All members are taken to be at one temperature; a case that warms later than its shafts passes through other gaps.");

    /// <summary>A selection.</summary>
    public static Formula Selection { get; } = new(
        "joint choice of rings, shims and cuts", "largest smallest margin; then least distance from the targets; fewest pieces; least cost; least metal removed", "computed here, no source: proven optimum",
        Cuts, "Fit what was chosen and read every gap again before closing up.");

    /// <summary>A fit by ISO classes.</summary>
    public static Formula IsoFit { get; } = new("limits and fits", "limits = nominal + fundamental deviation, width = IT grade, both by table", "ISO 286-1 and ISO 286-2, 0 to 500 mm");

    /// <summary>A running fit.</summary>
    public static Formula RunningFit { get; } = new("running fit", "limits by table", "ANSI/ASME B4.1-1967 (R2009)");

    /// <summary>A measured seat.</summary>
    public static Formula Seat { get; } = new(
        "measured seat at temperature", "clearance = bore − inner; change = ΔT·(bore·α_bore − inner·α_inner)", "linear expansion; chance from a normal spread",
        "A ring that has to be tight and may turn wears its seat: do not rely on a locking compound where the maker wants an interference.");

    /// <summary>Case depth.</summary>
    public static Formula CaseDepth { get; } = new(
        "case depth by interpolation", "CHD = d₁ + (d₂ − d₁)·(H₁ − H_limit)/(H₁ − H₂)", "ISO 18203 (formerly ISO 2639), interpolation from memory; conversion of HRC by ASTM A370 and E140",
        Cuts, "A face that is cut through its hardened layer fails soon: leave a good share of the layer.");
}
