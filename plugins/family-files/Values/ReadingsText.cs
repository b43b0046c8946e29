using FamilyFiles.Forms;

namespace FamilyFiles.Values;

/// <summary>Readings as one text: <c>4 x 2.6700 in</c>, <c>2.670 / 2.671 in</c>, or <c>3 x tight</c> for no gap at all. What was written is kept letter for letter.</summary>
internal static class ReadingsText
{
    public const string Wanted = "Readings such as 4 x 2.670 in, 2.670 / 2.671 / 2.669 in, or 3 x tight.";
    private const int MostTimes = 100;

    /// <summary>Reads them.</summary>
    /// <exception cref="FormatException">What is wrong.</exception>
    public static ImmutableArray<Reading> Read(string text)
    {
        var (times, rest) = Times(text.Trim());
        if (rest == "tight")
            return [.. Enumerable.Repeat(new Reading(null, Length.Zero, null, "tight", "mm", null), times)];
        var numbers = rest.Split(" / ");
        var (last, unit) = QuantityText.Split(numbers[^1]);
        numbers[^1] = last;
        return [.. Enumerable.Range(0, times).SelectMany(_ => numbers.Select(n => One(n.Trim(), unit)))];
    }

    private static (int Times, string Text) Times(string text)
    {
        if (text.Split(" x ", 2) is not [var times, var rest])
            return (1, text);
        return times.Length <= 3 && times.All(char.IsAsciiDigit) && int.Parse(times, NumberStyles.None, CultureInfo.InvariantCulture) is >= 1 and <= MostTimes and var n
            ? (n, rest.Trim())
            : throw new FormatException($"'{Plain.Short(times)}' is not a number of readings from 1 to {MostTimes}");
    }

    private static Reading One(string number, string unit) => QuantityText.With(number, unit) switch
    {
        Exact exact => Reading.Of(exact.Value, number, unit),
        var other => new Reading(null, null, other.InSi, number, unit, null),
    };
}
