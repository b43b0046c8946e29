using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Clearances;

/// <summary>What a number may have been before it was written down wrongly.</summary>
internal static class ReadingSlips
{
    /// <summary>The simple slips of one plain reading of a length, with the change that undoing each makes. Empty when it can't be told.</summary>
    public static IEnumerable<(Slip Slip, string Meant, Length Change)> Of(Reading reading)
    {
        if (reading is not { IsValue: true, Low: { } value } || !IsDecimal(reading.AsSent, out var sent) || sent == 0)
            yield break;
        var unit = value.Nanometres / sent;
        foreach (var meant in NeighboursSwapped(reading.AsSent))
        {
            if (IsDecimal(meant, out var number) && number != sent)
                yield return (Slip.TransposedDigits, meant, Change(number, sent, unit));
        }

        var turn = unit == 25_400_000m ? 0.025m : 500_000m / unit;
        foreach (var number in new[] { sent - turn, sent + turn })
            yield return (Slip.ThimbleTurn, number.ToString(CultureInfo.InvariantCulture), Change(number, sent, unit));
    }

    private static IEnumerable<string> NeighboursSwapped(string text)
    {
        var digits = Enumerable.Range(0, text.Length).Where(i => char.IsAsciiDigit(text[i])).ToArray();
        foreach (var (left, right) in digits.Zip(digits.Skip(1)))
        {
            var letters = text.ToCharArray();
            (letters[left], letters[right]) = (letters[right], letters[left]);
            if (letters[left] != letters[right])
                yield return new string(letters);
        }
    }

    private static Length Change(decimal number, decimal sent, decimal unit) =>
        new((long)decimal.Round((number - sent) * unit, MidpointRounding.AwayFromZero));

    private static bool IsDecimal(string text, out decimal number) =>
        decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out number);
}
