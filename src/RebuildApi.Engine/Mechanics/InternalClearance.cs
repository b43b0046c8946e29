using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Mechanics;

/// <summary>Groups of radial internal clearance.</summary>
public enum ClearanceGroup
{
    /// <summary>Smaller than normal.</summary>
    C2,

    /// <summary>Normal.</summary>
    CN,

    /// <summary>Larger than normal.</summary>
    C3,

    /// <summary>Larger than C3.</summary>
    C4,

    /// <summary>Larger than C4.</summary>
    C5,
}

/// <summary>
/// Radial internal clearance of deep-groove ball bearings and cylindrical roller bearings with cylindrical bore (ISO 5753-1, values read in several public copies, the majority
/// taken where one has a misprint), and what is left of it when the bearing is fitted and warm.
/// </summary>
public static class InternalClearance
{
    // Bore over (exclusive) to (inclusive) in mm; C2, CN, C3, C4, C5 least and most in µm.
    private static readonly ImmutableArray<(int Over, int UpTo, int[] Micrometres)> s_deepGroove =
    [
        (6, 10, [0, 7, 2, 13, 8, 23, 14, 29, 20, 37]),
        (10, 18, [0, 9, 3, 18, 11, 25, 18, 33, 25, 45]),
        (18, 24, [0, 10, 5, 20, 13, 28, 20, 36, 28, 48]),
        (24, 30, [1, 11, 5, 20, 13, 28, 23, 41, 30, 53]),
        (30, 40, [1, 11, 6, 20, 15, 33, 28, 46, 40, 64]),
        (40, 50, [1, 11, 6, 23, 18, 36, 30, 51, 45, 73]),
        (50, 65, [1, 15, 8, 28, 23, 43, 38, 61, 55, 90]),
        (65, 80, [1, 15, 10, 30, 25, 51, 46, 71, 65, 105]),
        (80, 100, [1, 18, 12, 36, 30, 58, 53, 84, 75, 120]),
        (100, 120, [2, 20, 15, 41, 36, 66, 61, 97, 90, 140]), // from memory
    ];

    // The same of cylindrical roller bearings with cylindrical bore. Read in one public copy: CN and C3 up to 65 mm; the rest is from memory.
    private static readonly ImmutableArray<(int Over, int UpTo, int[] Micrometres)> s_cylindricalRoller =
    [
        (10, 24, [0, 25, 20, 45, 35, 60, 50, 75, 65, 90]),
        (24, 30, [0, 25, 20, 45, 35, 60, 50, 75, 70, 95]),
        (30, 40, [5, 30, 25, 50, 45, 70, 60, 85, 80, 105]),
        (40, 50, [5, 35, 30, 60, 50, 80, 70, 100, 95, 125]),
        (50, 65, [10, 40, 40, 70, 60, 90, 80, 110, 110, 140]),
        (65, 80, [10, 45, 40, 75, 65, 100, 90, 125, 130, 165]),
        (80, 100, [15, 50, 50, 85, 75, 110, 105, 140, 155, 190]),
    ];

    private static readonly Source s_source = new(SourceKind.Published, "ISO 5753-1, deep-groove ball bearings, cylindrical bore");
    private static readonly Source s_rollerSource = new(SourceKind.Published, "ISO 5753-1, cylindrical roller bearings, cylindrical bore");

    /// <summary>Limits of a group at a bore; null outside the table. A bore of exactly 30 mm belongs to "over 24 to 30".</summary>
    public static Limits? DeepGroove(Length bore, ClearanceGroup group) => At(s_deepGroove, bore, group, s_source);

    /// <summary>The same of a cylindrical roller bearing.</summary>
    public static Limits? CylindricalRoller(Length bore, ClearanceGroup group) => At(s_cylindricalRoller, bore, group, s_rollerSource);

    /// <summary>Clearance lost by an interference fit, m: interference × factor. The factor is a rule of thumb, 0.7 to 0.9 on a solid steel shaft (from memory).</summary>
    /// <param name="interference">Effective interference, m; negative is a loose fit and takes nothing.</param>
    /// <param name="factor">Share of it that reaches the raceway, 0..1.</param>
    public static double LossByInterference(double interference, double factor = 0.8)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(factor);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(factor, 1);
        return Math.Max(0, interference) * factor;
    }

    /// <summary>Clearance lost when the inner ring is warmer than the outer, m: α·ΔT·d.</summary>
    /// <param name="expansionPerKelvin">α of the rings, 1/K.</param>
    /// <param name="innerWarmerBy">ΔT, K.</param>
    /// <param name="racewayDiameter">d, mean raceway diameter, m.</param>
    public static double LossByTemperature(double expansionPerKelvin, double innerWarmerBy, double racewayDiameter) =>
        expansionPerKelvin * innerWarmerBy * racewayDiameter;

    /// <summary>Interference that an outer ring loses in a warm housing, m: (α housing − α ring)·ΔT·D.</summary>
    /// <param name="housingExpansion">1/K.</param>
    /// <param name="ringExpansion">1/K.</param>
    /// <param name="warmerBy">ΔT above 20 °C, K.</param>
    /// <param name="bore">D, m.</param>
    public static double HousingGrowth(double housingExpansion, double ringExpansion, double warmerBy, double bore) =>
        (housingExpansion - ringExpansion) * warmerBy * bore;

    private static Limits? At(ImmutableArray<(int Over, int UpTo, int[] Micrometres)> table, Length bore, ClearanceGroup group, Source source)
    {
        var row = table.FirstOrDefault(r => bore > Length.Millimetres(r.Over) && bore <= Length.Millimetres(r.UpTo));
        if (row.Micrometres is null)
            return null;
        var column = 2 * (int)group;
        return Limits.Between(Length.Micrometres(row.Micrometres[column]), Length.Micrometres(row.Micrometres[column + 1]), source);
    }
}
