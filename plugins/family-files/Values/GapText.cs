using FamilyFiles.Forms;

namespace FamilyFiles.Values;

/// <summary>
/// A sum of dimensions as one text, read as it is said: <c>mainshaft/third-seat - hub-3-4/width - 2 x rollers/diameter - piece of snap-ring-3-4</c>.
/// A piece sits at the position of its series' name, or <c>at</c> another one; a pack is <c>piece of input-shim up to 3</c>. Shares are written
/// <c>1/2 x</c>. A length that does not vary is written with its unit. Plus and minus stand between blanks.
/// </summary>
internal static class GapText
{
    public const string Wanted = "A sum such as mainshaft/third-seat - hub-3-4/width - 1/2 x fork/pad - piece of snap-ring-3-4, with blanks around + and -.";
    private const int MostTerms = 64;

    /// <summary>Reads the terms.</summary>
    /// <exception cref="FormatException">What is wrong.</exception>
    public static ImmutableArray<Term> Read(string text)
    {
        var words = new Queue<string>(text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        var terms = ImmutableArray.CreateBuilder<Term>();
        var sign = words.TryPeek(out var first) && first is "+" or "-" ? Sign(words.Dequeue()) : 1;
        while (true)
        {
            terms.Add(OneTerm(sign, words));
            if (terms.Count > MostTerms)
                throw new FormatException($"A sum has at most {MostTerms} members");
            if (!words.TryDequeue(out var next))
                return terms.ToImmutable();
            sign = Sign(next);
        }
    }

    private static int Sign(string word) => word switch
    {
        "+" => 1,
        "-" => -1,
        _ => throw new FormatException($"'{Plain.Short(word)}' stands where + or - is wanted"),
    };

    private static Term OneTerm(int sign, Queue<string> words)
    {
        var own = new List<string>();
        while (words.TryPeek(out var word) && word is not ("+" or "-"))
            own.Add(words.Dequeue());
        if (own is [var share, "x", .. var rest])
        {
            var (numerator, denominator) = Share(share);
            return new Term(Member(rest), sign * numerator, denominator);
        }

        return new Term(Member(own), sign);
    }

    private static (int Numerator, int Denominator) Share(string text)
    {
        var parts = text.Split('/');
        return parts.Length <= 2 && parts.All(p => p.Length <= 6 && p.All(char.IsAsciiDigit) && p.Length > 0)
            ? (Whole(parts[0]), parts.Length == 2 ? Whole(parts[1]) : 1)
            : throw new FormatException($"'{Plain.Short(text)}' is not a share such as 2 or 1/2");
    }

    private static int Whole(string digits) => int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);

    private static Dim Member(List<string> words) => words switch
    {
        ["piece", "of", var series] => new OfSeries(series, series),
        ["piece", "of", var series, "at", var position] => new OfSeries(series, position),
        ["piece", "of", var series, "up", "to", var most] => new OfSeries(series, series, Most(most)),
        ["piece", "of", var series, "at", var position, "up", "to", var most] => new OfSeries(series, position, Most(most)),
        [var number, var unit] => new Fixed(QuantityText.Length(number + " " + unit)),
        [var name] => new OfPart(Address.TryParse(name) ?? new Address("", name)),
        [] => throw new FormatException("A member is missing beside + or -"),
        _ => throw new FormatException($"'{Plain.Short(string.Join(' ', words))}' is neither position/characteristic, a piece of a series, nor a length"),
    };

    private static int Most(string text) => text.Length <= 4 && text.All(char.IsAsciiDigit) ? Whole(text) : throw new FormatException($"'{Plain.Short(text)}' is not a number of pieces");
}
