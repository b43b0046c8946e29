using System.Collections.Immutable;

namespace RebuildApi.Engine.Mechanics;

/// <summary>Factors of the equivalent load P = X·Fr + Y·Fa, for Fa/Fr above e; up to e thrust does not count.</summary>
/// <param name="E">e.</param>
/// <param name="X">X above e.</param>
/// <param name="Y">Y above e.</param>
public sealed record LoadFactors(double E, double X, double Y);

/// <summary>Load factors by type of bearing (ISO 281:2007; the deep-groove table read in a public copy of a bearing catalogue).</summary>
public static class BearingLoadFactors
{
    /// <summary>
    /// f0 that turns the standard's table by f0·Fa/C0 into the one by Fa/C0 that textbooks print; a bearing's own f0 lies between 12 and 17.
    /// </summary>
    public const double UsualF0 = 12.3;

    private const double DeepGrooveX = 0.56;
    private const double TaperedX = 0.4;

    // f0·Fa/C0r, e, Y of single-row deep-groove ball bearings with normal clearance.
    private static readonly ImmutableArray<(double Load, double E, double Y)> s_deepGroove =
    [
        (0.172, 0.19, 2.30), (0.345, 0.22, 1.99), (0.689, 0.26, 1.71), (1.03, 0.28, 1.55), (1.38, 0.30, 1.45),
        (2.07, 0.34, 1.31), (3.45, 0.38, 1.15), (5.17, 0.42, 1.04), (6.89, 0.44, 1.00),
    ];

    /// <summary>Single-row deep-groove ball bearing: e and Y between the rows of the table by straight lines, at its ends the end row.</summary>
    /// <param name="axial">Fa, N; its size counts.</param>
    /// <param name="staticRating">C0, N; positive.</param>
    /// <param name="f0">f0 of the bearing.</param>
    public static LoadFactors DeepGroove(double axial, double staticRating, double f0 = UsualF0)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(staticRating);
        var load = Math.Clamp(f0 * Math.Abs(axial) / staticRating, s_deepGroove[0].Load, s_deepGroove[^1].Load);
        var above = Math.Max(1, s_deepGroove.Count(row => row.Load < load));
        var (low, high) = (s_deepGroove[above - 1], s_deepGroove[above]);
        var share = (load - low.Load) / (high.Load - low.Load);
        return new LoadFactors(double.Lerp(low.E, high.E, share), DeepGrooveX, double.Lerp(low.Y, high.Y, share));
    }

    /// <summary>Single-row tapered roller bearing: X = 0.4, Y = 0.4·cot α and e = 1.5·tan α, so Y = 0.6/e.</summary>
    /// <param name="e">e; positive.</param>
    public static LoadFactors Tapered(double e)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(e);
        return new LoadFactors(e, TaperedX, 1.5 * TaperedX / e);
    }

    /// <summary>Thrust, N, with which a radial load pushes a tapered bearing apart, to be held by its mate: Fr/(2·Y) (bearing catalogues; from memory).</summary>
    public static double InducedThrust(double radial, double y)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(y);
        return Math.Abs(radial) / (2 * y);
    }
}
