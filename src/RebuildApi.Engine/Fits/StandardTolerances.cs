using RebuildApi.Contracts;

namespace RebuildApi.Engine.Fits;

/// <summary>
/// Standard tolerances IT1 to IT12 of ISO 286-1, table 1. Always taken from the table: the generating formula gives other values than the rounded
/// ones in many steps. IT4 to IT11 up to 250 mm were read in three copies that agree; the rest is from memory.
/// </summary>
public static class StandardTolerances
{
    /// <summary>Tenths of a micrometre by grade, then by main step of size.</summary>
    private static readonly int[][] Tenths =
    [
        [8, 10, 10, 12, 15, 15, 20, 25, 35, 45, 60, 70, 80],
        [12, 15, 15, 20, 25, 25, 30, 40, 50, 70, 80, 90, 100],
        [20, 25, 25, 30, 40, 40, 50, 60, 80, 100, 120, 130, 150],
        [30, 40, 40, 50, 60, 70, 80, 100, 120, 140, 160, 180, 200],
        [40, 50, 60, 80, 90, 110, 130, 150, 180, 200, 230, 250, 270],
        [60, 80, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400],
        [100, 120, 150, 180, 210, 250, 300, 350, 400, 460, 520, 570, 630],
        [140, 180, 220, 270, 330, 390, 460, 540, 630, 720, 810, 890, 970],
        [250, 300, 360, 430, 520, 620, 740, 870, 1000, 1150, 1300, 1400, 1550],
        [400, 480, 580, 700, 840, 1000, 1200, 1400, 1600, 1850, 2100, 2300, 2500],
        [600, 750, 900, 1100, 1300, 1600, 1900, 2200, 2500, 2900, 3200, 3600, 4000],
        [1000, 1200, 1500, 1800, 2100, 2500, 3000, 3500, 4000, 4600, 5200, 5700, 6300],
    ];

    /// <summary>The tolerance of a grade at a nominal size.</summary>
    /// <param name="nominal">Over 0 up to and including 500 mm.</param>
    /// <param name="grade">1 to 12.</param>
    /// <exception cref="ArgumentException">Size or grade is outside the table.</exception>
    public static Length Of(Length nominal, int grade)
    {
        if (grade < 1 || grade > Tenths.Length)
            throw new ArgumentException($"IT{grade} is not in the table, which holds IT1 to IT{Tenths.Length}.", nameof(grade));
        return new Length(100L * Tenths[grade - 1][SizeSteps.Main(nominal)]);
    }

    /// <summary>Whether the value is from memory and was not read in a copy of the table.</summary>
    public static bool IsFromMemory(Length nominal, int grade) => grade is < 4 or > 11 || nominal > Length.Millimetres(250);
}
