using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>What a person may have meant by a reading, for each of the usual slips.</summary>
internal static class SlipCandidates
{
    private static readonly (string Unit, double Nanometres)[] LengthUnits = [("mm", 1e6), ("in", 25.4e6), ("thou", 25_400)];
    private static readonly double[] DecimalShifts = [10, 100, 0.1, 0.01];

    /// <summary>The same number in another unit of length.</summary>
    public static IEnumerable<Slip> Units(double point, Reading reading, Scale scale)
    {
        if (scale.Dimension != Dimension.Length || Sent(reading) is not { } number)
            return [];
        return LengthUnits
            .Select(u => new Slip("plausible-in-another-unit", Math.Round(number * u.Nanometres), u.Unit))
            .Where(s => Math.Abs(s.Point - point) > 1e-6 * Math.Abs(point));
    }

    /// <summary>Two neighbouring digits changed round.</summary>
    public static IEnumerable<Slip> Swaps(double point, Reading reading)
    {
        var text = reading.AsSent;
        if (Sent(reading) is not { } number || number == 0)
            yield break;
        var digits = Enumerable.Range(0, text.Length).Where(i => char.IsAsciiDigit(text[i])).ToArray();
        for (var i = 1; i < digits.Length; i++)
        {
            var (first, second) = (digits[i - 1], digits[i]);
            var characters = text.ToCharArray();
            (characters[first], characters[second]) = (characters[second], characters[first]);
            if (text[first] != text[second] && Number(new string(characters)) is { } swapped)
                yield return new Slip("digits-swapped", point / number * swapped, null);
        }
    }

    /// <summary>The decimal point one or two places off.</summary>
    public static IEnumerable<Slip> Decimals(double point) => DecimalShifts.Select(f => new Slip("decimal-slipped", point * f, null));

    private static double? Sent(Reading reading) => Number(reading.AsSent);

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;
}

/// <summary>What may have been meant.</summary>
/// <param name="Code">The slip.</param>
/// <param name="Point">The value meant, on the scale.</param>
/// <param name="Unit">The unit meant, where that is the slip.</param>
internal sealed record Slip(string Code, double Point, string? Unit);
