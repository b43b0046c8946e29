using System.Globalization;

namespace RebuildApi.Server.Composition.Labels;

/// <summary>
/// A short code to write on a unit or a part: <c>U</c> or <c>P</c>, a running number, a check letter: <c>P1042A</c>. The letter is the sum of the digits,
/// the last one times 2, the one before times 3 and so on, plus 1 for a unit and 2 for a part, modulo 23, as one of 23 letters: I, L and O are left
/// out. As 23 is prime and no two weights are the same, any one wrong character and any two digits that changed places, neighbours or not, give
/// another letter; of other slips, such as a digit left out, 22 in 23 do.
/// </summary>
/// <param name="Sort"><c>U</c> for a unit, <c>P</c> for a part.</param>
/// <param name="Number">The running number; at least 0.</param>
public readonly record struct LabelCode(char Sort, long Number)
{
    /// <summary>The sort of a unit.</summary>
    public const char OfUnit = 'U';

    /// <summary>The sort of a part.</summary>
    public const char OfPart = 'P';

    /// <summary>The first number that is given out.</summary>
    public const long First = 1001;

    private const string Letters = "ABCDEFGHJKMNPQRSTUVWXYZ";
    private const int FewestDigits = 4;
    private const int MostDigits = 12;

    /// <summary>The letter that follows from the rest.</summary>
    public char CheckLetter => Letters[Sum(Sort, Digits(Number)) % Letters.Length];

    /// <inheritdoc/>
    public override string ToString() => $"{Sort}{Digits(Number)}{CheckLetter}";

    /// <summary>Reads what was scanned or typed: blanks, hyphens and case do not matter, and O, I and L among digits are the digits that they look like.</summary>
    public static LabelReading Read(string typed)
    {
        var text = new string([.. typed.Where(c => c is not (' ' or '-')).Select(char.ToUpperInvariant)]);
        if (text.Length < FewestDigits + 2 || text.Length > MostDigits + 2 || text[0] is not (OfUnit or OfPart))
            return new(null, null);
        var digits = new string([.. text[1..^1].Select(AsDigit)]);
        if (!digits.All(char.IsAsciiDigit))
            return new(null, null);
        var code = new LabelCode(text[0], long.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture));
        var letter = Letters[Sum(text[0], digits) % Letters.Length];
        return letter == text[^1] && Digits(code.Number) == digits ? new(code, null) : new(null, letter);
    }

    private static string Digits(long number) => number.ToString("D4", CultureInfo.InvariantCulture);

    private static char AsDigit(char c) => c switch { 'O' => '0', 'I' or 'L' => '1', _ => c };

    private static int Sum(char sort, string digits)
    {
        var sum = sort == OfUnit ? 1 : 2;
        for (var i = 0; i < digits.Length; i++)
            sum += (digits[^(i + 1)] - '0') * (i + 2);
        return sum;
    }
}

/// <summary>What was read.</summary>
/// <param name="Code">The code; none when it is mistyped.</param>
/// <param name="Expected">The check letter that would go with the rest, where the rest has the form of a code.</param>
public readonly record struct LabelReading(LabelCode? Code, char? Expected);
