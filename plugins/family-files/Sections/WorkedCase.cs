namespace FamilyFiles.Sections;

/// <summary>
/// How a worked case is dressed as a unit: parts are called after their positions, everything was read with one gauge good to a micrometre, by
/// nobody in particular. The words for families in C# dress theirs alike.
/// </summary>
internal static class WorkedCase
{
    public const string Unit = "golden";
    private const string Gauge = "reference-gauge";

    public static Taken Seen { get; } = new(null, null, "author", "paper", new DateTimeOffset(2026, 1, 5, 9, 0, 0, TimeSpan.Zero), null);

    public static Taken Read { get; } = Seen with { Instrument = Gauge };

    public static InstrumentState Instrument { get; } =
        new(Gauge, "outside-micrometer", new Exact(Length.Micrometres(1)), new Exact(Length.Micrometres(1)), ErrorModel.Rectangular, null);

    /// <summary>A place as it is written: <c>keys-3-4#2</c> is the second of several.</summary>
    /// <exception cref="FormatException">The number is none.</exception>
    public static (string Position, int Index) Place(string text) => text.Split('#', 2) switch
    {
        [var position] => (position, 1),
        [var position, var number] when number.Length is 1 or 2 && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var index) && index > 0 => (position, index),
        _ => throw new FormatException($"'{Forms.Plain.Short(text)}' is not a place such as keys-3-4#2"),
    };

    /// <summary>A place with a characteristic or attribute: <c>keys-3-4#2/width</c>.</summary>
    /// <exception cref="FormatException">It is not of that form.</exception>
    public static (string Position, int Index, string What) At(string text) => text.Split('/', 2) is [var place, var what] && Place(place) is var (position, index)
        ? (position, index, what)
        : throw new FormatException($"'{Forms.Plain.Short(text)}' is not position/characteristic");

    /// <summary>What the part there is called.</summary>
    public static string Part(string position, int index) => index == 1 ? position : string.Create(CultureInfo.InvariantCulture, $"{position}-{index}");
}
