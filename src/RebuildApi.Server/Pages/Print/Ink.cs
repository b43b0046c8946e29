using SkiaSharp;

namespace RebuildApi.Server.Pages;

/// <summary>Words on paper.</summary>
public static class Ink
{
    /// <summary>Words broken into lines that fit a width: between words, and inside a word that is wider than the whole line.</summary>
    public static IReadOnlyList<string> Lines(string text, SKFont font, float width)
    {
        var lines = new List<string>();
        foreach (var part in text.ReplaceLineEndings("\n").Split('\n'))
            lines.AddRange(Broken(part, font, width));
        return lines;
    }

    /// <summary>The same for letters of a size.</summary>
    public static IReadOnlyList<string> Lines(string text, float size, float width)
    {
        using var font = Fonts.At(size);
        return Lines(text, font, width);
    }

    /// <summary>One line of words.</summary>
    public static void Line(SKCanvas canvas, string words, float x, float y, float size, bool bold = false, SKTextAlign align = SKTextAlign.Left)
    {
        using var font = Fonts.At(size, bold);
        using var ink = new SKPaint { Color = SKColors.Black, IsAntialias = true };
        canvas.DrawText(words, x, y, align, font, ink);
    }

    /// <summary>A thin rule.</summary>
    public static void Rule(SKCanvas canvas, float x1, float x2, float y, float thick = 0.5f)
    {
        using var ink = new SKPaint { Color = SKColors.Black, StrokeWidth = thick, Style = SKPaintStyle.Stroke };
        canvas.DrawLine(x1, y, x2, y, ink);
    }

    private static IEnumerable<string> Broken(string text, SKFont font, float width)
    {
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (font.MeasureText(longer) <= width)
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
                yield return line;
            line = word;
            while (font.MeasureText(line) > width)
            {
                var fits = Fitting(line, font, width);
                yield return line[..fits];
                line = line[fits..];
            }
        }

        yield return line;
    }

    // Never between the two halves of one character.
    private static int Fitting(string word, SKFont font, float width)
    {
        var fits = Math.Max(1, word.Length - 1);
        while (fits > 1 && font.MeasureText(word[..fits]) > width)
            fits--;
        return fits > 1 && char.IsHighSurrogate(word[fits - 1]) ? fits - 1 : char.IsHighSurrogate(word[0]) && fits == 1 ? Math.Min(2, word.Length) : fits;
    }
}
