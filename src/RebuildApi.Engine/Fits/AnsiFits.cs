using RebuildApi.Contracts;

namespace RebuildApi.Engine.Fits;

/// <summary>Running fits of ANSI/ASME B4.1-1967 (R2009), in the sizes that were read in Machinery's Handbook, 31st edition, table 8a.</summary>
public static class AnsiFits
{
    private static readonly Source Read = new(SourceKind.Published, "ANSI/ASME B4.1-1967 (R2009), by Machinery's Handbook, 31st ed., table 8a");

    /// <summary>Class, size over and up to (inches), then hole upper, shaft upper and shaft lower deviation in thousandths; the hole starts at 0.</summary>
    private static readonly (string Class, decimal Over, decimal UpTo, string Hole, string Shaft, decimal HoleUpper, decimal ShaftUpper, decimal ShaftLower)[] Table =
    [
        ("RC1", 0.71m, 1.19m, "H5", "g4", 0.4m, -0.3m, -0.55m),
        ("RC2", 0.71m, 1.19m, "H6", "g5", 0.5m, -0.3m, -0.7m),
        ("RC3", 0.71m, 1.19m, "H7", "f6", 0.8m, -0.8m, -1.3m),
        ("RC4", 0.71m, 1.19m, "H8", "f7", 1.2m, -0.8m, -1.6m),
        ("RC4", 1.19m, 1.97m, "H8", "f7", 1.6m, -1.0m, -2.0m),
    ];

    /// <summary>A running fit.</summary>
    /// <param name="nominal">The nominal size.</param>
    /// <param name="class"><c>RC1</c> to <c>RC4</c>.</param>
    /// <exception cref="ArgumentException">Class and size are not in the part of the table that is held here; nothing is guessed.</exception>
    public static Fit Of(Length nominal, string @class)
    {
        foreach (var row in Table)
        {
            if (row.Class == @class && nominal > Length.Inches(row.Over) && nominal <= Length.Inches(row.UpTo))
            {
                return new Fit(
                    new FitZone(nominal, row.Hole, Length.Zero, Thousandths(row.HoleUpper), Read),
                    new FitZone(nominal, row.Shaft, Thousandths(row.ShaftLower), Thousandths(row.ShaftUpper), Read));
            }
        }

        throw new ArgumentException($"{@class} at {nominal} is not held; held are RC1 to RC4 over 0.71 to 1.19 in and RC4 to 1.97 in.", nameof(@class));
    }

    private static Length Thousandths(decimal value) => Length.Inches(value / 1000);
}
