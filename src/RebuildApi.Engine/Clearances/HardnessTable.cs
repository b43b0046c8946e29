namespace RebuildApi.Engine.Clearances;

/// <summary>
/// Rockwell C to Vickers for non-austenitic steel, ASTM A370-03a and E140, 40 to 68 HRC. Conversions are approximate by the standard's own words;
/// nothing is given outside the table.
/// </summary>
public static class HardnessTable
{
    private const int First = 40;

    private static readonly int[] Vickers =
    [
        392, 402, 412, 423, 434, 446, 458, 471, 484, 498, 513, 528, 544, 560, 577, 595, 613, 633, 653, 674, 697, 720, 746, 772, 800, 832, 865, 900, 940,
    ];

    /// <summary>HV of a hardness in HRC, linear between whole numbers.</summary>
    /// <exception cref="ArgumentException">Outside 40 to 68.</exception>
    public static double VickersOf(double rockwellC)
    {
        if (rockwellC is not (>= First and <= First + 28))
            throw new ArgumentException("The table holds 40 to 68 HRC.", nameof(rockwellC));
        var below = Math.Min((int)rockwellC, First + 27) - First;
        return Vickers[below] + ((rockwellC - First - below) * (Vickers[below + 1] - Vickers[below]));
    }

    /// <summary>HRC of a hardness in HV, linear between.</summary>
    /// <exception cref="ArgumentException">Outside 392 to 940.</exception>
    public static double RockwellCOf(double vickers)
    {
        if (vickers is not (>= 392 and <= 940))
            throw new ArgumentException("The table holds 392 to 940 HV.", nameof(vickers));
        var above = Math.Max(1, Array.FindIndex(Vickers, v => v >= vickers));
        return First + above - 1 + ((vickers - Vickers[above - 1]) / (Vickers[above] - Vickers[above - 1]));
    }
}
