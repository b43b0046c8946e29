using RebuildApi.Contracts;

namespace RebuildApi.Engine.Fits;

/// <summary>
/// Running fits RC1 to RC4 of ANSI/ASME B4.1-1967 (R2009), up to 4.73 in. Over 0.71 to 1.19 in, and RC4 up to 1.97 in, were read in Machinery's
/// Handbook, 31st edition, table 8a; the other sizes are from memory and their source says so.
/// </summary>
public static class AnsiFits
{
    private static readonly Source Read = new(SourceKind.Published, "ANSI/ASME B4.1-1967 (R2009), by Machinery's Handbook, 31st ed., table 8a");
    private static readonly Source Remembered = new(SourceKind.Judgement, "ANSI/ASME B4.1-1967 (R2009), from memory: look it up before you work to it");

    /// <summary>Upper ends of the size steps, inches, included.</summary>
    private static readonly decimal[] Steps = [0.12m, 0.24m, 0.40m, 0.71m, 1.19m, 1.97m, 3.15m, 4.73m];

    /// <summary>By class and size step: hole upper, shaft upper and shaft lower deviation in thousandths; the hole starts at 0.</summary>
    private static readonly (string Class, string Hole, string Shaft, decimal[] HoleUpper, decimal[] ShaftUpper, decimal[] ShaftLower)[] Table =
    [
        ("RC1", "H5", "g4",
            [0.2m, 0.2m, 0.25m, 0.3m, 0.4m, 0.4m, 0.5m, 0.6m],
            [-0.1m, -0.15m, -0.2m, -0.25m, -0.3m, -0.4m, -0.4m, -0.5m],
            [-0.25m, -0.3m, -0.35m, -0.45m, -0.55m, -0.7m, -0.7m, -0.9m]),
        ("RC2", "H6", "g5",
            [0.25m, 0.3m, 0.4m, 0.4m, 0.5m, 0.6m, 0.7m, 0.9m],
            [-0.1m, -0.15m, -0.2m, -0.25m, -0.3m, -0.4m, -0.4m, -0.5m],
            [-0.3m, -0.35m, -0.45m, -0.55m, -0.7m, -0.8m, -0.9m, -1.1m]),
        ("RC3", "H7", "f6",
            [0.4m, 0.5m, 0.6m, 0.7m, 0.8m, 1.0m, 1.2m, 1.4m],
            [-0.3m, -0.4m, -0.5m, -0.6m, -0.8m, -1.0m, -1.2m, -1.4m],
            [-0.55m, -0.7m, -0.9m, -1.0m, -1.3m, -1.6m, -1.9m, -2.3m]),
        ("RC4", "H8", "f7",
            [0.6m, 0.7m, 0.9m, 1.0m, 1.2m, 1.6m, 1.8m, 2.2m],
            [-0.3m, -0.4m, -0.5m, -0.6m, -0.8m, -1.0m, -1.2m, -1.4m],
            [-0.7m, -0.9m, -1.1m, -1.3m, -1.6m, -2.0m, -2.4m, -2.8m]),
    ];

    /// <summary>A running fit.</summary>
    /// <param name="nominal">Over 0 up to and including 4.73 in.</param>
    /// <param name="class"><c>RC1</c> to <c>RC4</c>.</param>
    /// <exception cref="ArgumentException">Class or size is not in the part of the table that is held here; nothing is guessed.</exception>
    public static Fit Of(Length nominal, string @class)
    {
        var row = Array.Find(Table, r => r.Class == @class);
        var step = nominal > Length.Zero ? Array.FindIndex(Steps, s => nominal <= Length.Inches(s)) : -1;
        if (row.Class is null || step < 0)
            throw new ArgumentException($"{@class} at {nominal} is not held; held are RC1 to RC4 up to 4.73 in.", nameof(@class));
        var source = WasRead(@class, Steps[step]) ? Read : Remembered;
        return new Fit(
            new FitZone(nominal, row.Hole, Length.Zero, Thousandths(row.HoleUpper[step]), source),
            new FitZone(nominal, row.Shaft, Thousandths(row.ShaftLower[step]), Thousandths(row.ShaftUpper[step]), source));
    }

    private static bool WasRead(string @class, decimal upTo) => upTo == 1.19m || (@class == "RC4" && upTo == 1.97m);

    private static Length Thousandths(decimal value) => Length.Inches(value / 1000);
}
