using SkiaSharp;

namespace RebuildApi.Server.Pages;

/// <summary>
/// The letters of pictures and printed matter. They lie inside the program (DejaVu Sans Condensed, cut down to European letters and the signs used here; its licence beside it), so that a
/// machine without any fonts prints the same sheet.
/// </summary>
public static class Fonts
{
    private static readonly SKTypeface Usual = Load("DejaVuSansCondensed.ttf");
    private static readonly SKTypeface Heavy = Load("DejaVuSansCondensed-Bold.ttf");

    /// <summary>The letters at a size, in points or user units. Their widths are those of the drawing of the letter, not of a screen: print would space them unevenly.</summary>
    public static SKFont At(float size, bool bold = false) => new(bold ? Heavy : Usual, size) { Subpixel = true, LinearMetrics = true, Hinting = SKFontHinting.None };

    private static SKTypeface Load(string name)
    {
        using var bytes = new MemoryStream(PageAssets.Bytes("fonts/" + name));
        return SKTypeface.FromStream(bytes) ?? throw new InvalidDataException("The program's own font can't be read.");
    }
}
