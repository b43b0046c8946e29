using RebuildApi.Contracts;

namespace RebuildApi.Engine.Fits;

/// <summary>
/// Fundamental deviations of ISO 286-1, 0 to 500 mm: of shafts by table, of holes from those of shafts by the general rule and the delta rule.
/// f, g, h, k, m, n and p up to 250 mm were read in three copies that agree; d, e, j, r, s, J and all over 250 mm are from memory.
/// </summary>
internal static class FundamentalDeviations
{
    /// <summary>Upper deviation of shafts, micrometres, by main step.</summary>
    private static readonly Dictionary<string, int[]> UpperOfShaft = new(StringComparer.Ordinal)
    {
        ["d"] = [-20, -30, -40, -50, -65, -80, -100, -120, -145, -170, -190, -210, -230],
        ["e"] = [-14, -20, -25, -32, -40, -50, -60, -72, -85, -100, -110, -125, -135],
        ["f"] = [-6, -10, -13, -16, -20, -25, -30, -36, -43, -50, -56, -62, -68],
        ["g"] = [-2, -4, -5, -6, -7, -9, -10, -12, -14, -15, -17, -18, -20],
        ["h"] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
    };

    /// <summary>Lower deviation of shafts, micrometres, by main step.</summary>
    private static readonly Dictionary<string, int[]> LowerOfShaft = new(StringComparer.Ordinal)
    {
        ["k"] = [0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5],
        ["m"] = [2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23],
        ["n"] = [4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40],
        ["p"] = [6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68],
    };

    /// <summary>Lower deviation of shafts, micrometres, by intermediate step.</summary>
    private static readonly Dictionary<string, int[]> LowerOfShaftFine = new(StringComparer.Ordinal)
    {
        ["r"] = [10, 15, 19, 23, 28, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84, 94, 98, 108, 114, 126, 132],
        ["s"] = [14, 19, 23, 28, 35, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140, 158, 170, 190, 208, 232, 252],
    };

    /// <summary>Lower deviation of j5 and j6, micrometres.</summary>
    private static readonly int[] LowerOfJ = [-2, -2, -2, -3, -4, -5, -7, -9, -11, -13, -16, -18, -20];

    /// <summary>Upper deviation of J6, J7 and J8, micrometres.</summary>
    private static readonly int[][] UpperOfHoleJ =
    [
        [2, 5, 5, 6, 8, 10, 13, 16, 18, 22, 25, 29, 33],
        [4, 6, 8, 10, 12, 14, 18, 22, 26, 30, 36, 39, 43],
        [6, 10, 12, 15, 20, 24, 28, 34, 41, 47, 55, 60, 66],
    ];

    /// <summary>Upper deviation of a shaft letter that is tabulated by it (d to h), or none.</summary>
    public static Length? UpperShaft(string letter, Length nominal) =>
        UpperOfShaft.TryGetValue(letter, out var table) ? Micrometres(table[SizeSteps.Main(nominal)]) : null;

    /// <summary>Lower deviation of a shaft letter that is tabulated by it (j to s), or none. k is 0 outside grades 4 to 7; j is given for grades 5 and 6.</summary>
    public static Length? LowerShaft(string letter, Length nominal, int grade) => letter switch
    {
        "j" => grade is 5 or 6 ? Micrometres(LowerOfJ[SizeSteps.Main(nominal)]) : null,
        "k" when grade is < 4 or > 7 => Length.Zero,
        _ when LowerOfShaft.TryGetValue(letter, out var table) => Micrometres(table[SizeSteps.Main(nominal)]),
        _ when LowerOfShaftFine.TryGetValue(letter, out var fine) => Micrometres(fine[SizeSteps.Fine(nominal)]),
        _ => null,
    };

    /// <summary>Lower deviation of a hole letter D to H: EI = −es of the shaft of that letter; or none.</summary>
    public static Length? LowerHole(string letter, Length nominal) => -UpperShaft(letter.ToLowerInvariant(), nominal);

    /// <summary>
    /// Upper deviation of a hole letter J to S; or none. Delta rule (4.3.2.5 of the standard, from memory): for K, M, N up to IT8 and P to S up to IT7,
    /// over 3 mm, ES = −ei + Δ with Δ = IT(n) − IT(n−1), so that a hole of grade n fits a shaft of grade n−1 as in the hole-basis fit.
    /// </summary>
    public static Length? UpperHole(string letter, Length nominal, int grade)
    {
        var size = nominal > Length.Millimetres(3);
        return letter switch
        {
            "J" => grade is >= 6 and <= 8 ? Micrometres(UpperOfHoleJ[grade - 6][SizeSteps.Main(nominal)]) : null,
            "K" when grade > 8 => size ? null : Length.Zero,
            "N" when grade > 8 => size ? Length.Zero : Micrometres(-4),
            "M" when grade == 6 && SizeSteps.Main(nominal) == 10 => Micrometres(-9),
            "K" or "M" or "N" => Delta(letter, nominal, grade, size && grade <= 8),
            _ => Delta(letter, nominal, grade, size && grade <= 7),
        };
    }

    /// <summary>Whether the deviation is from memory and was not read in a copy of the table.</summary>
    public static bool IsFromMemory(string letter, Length nominal) =>
        nominal > Length.Millimetres(250) || !"fghkmnpFGHKMNP".Contains(letter, StringComparison.Ordinal);

    private static Length? Delta(string letter, Length nominal, int grade, bool applies)
    {
        var basis = letter == "K" ? Math.Clamp(grade, 4, 7) : grade;
        var lower = LowerShaft(letter.ToLowerInvariant(), nominal, basis);
        return applies && grade > 1
            ? -lower + (StandardTolerances.Of(nominal, grade) - StandardTolerances.Of(nominal, grade - 1))
            : -lower;
    }

    private static Length Micrometres(int value) => Length.Micrometres(value);
}
