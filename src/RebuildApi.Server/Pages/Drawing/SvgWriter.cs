using System.Globalization;

namespace RebuildApi.Server.Pages;

/// <summary>Writes drawings as SVG 2.</summary>
public static class SvgWriter
{
    /// <summary>The drawing for a page, which takes its colours from there.</summary>
    public static string Inside(Drawn drawn) =>
        $"<svg viewBox=\"0 0 {N(drawn.Sketch.Width)} {N(drawn.Height)}\" role=\"img\" fill=\"currentColor\" font-family=\"system-ui, sans-serif\">{Title(drawn)}{Shapes(drawn)}</svg>";

    /// <summary>The drawing as a document of its own, dark on white.</summary>
    public static string Document(Drawn drawn) => $"""
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {N(drawn.Sketch.Width)} {N(drawn.Height)}" width="{N(drawn.Sketch.Width)}" height="{N(drawn.Height)}" role="img" fill="currentColor" color="#16202a" font-family="system-ui, sans-serif">{Title(drawn)}<rect width="100%" height="100%" fill="#ffffff"/>{Shapes(drawn)}</svg>
        """;

    private static string Title(Drawn drawn) => $"<title>{Page.Safe(drawn.Sketch.Title)}</title>";

    private static string Shapes(Drawn drawn) => string.Concat(drawn.Sketch.Shapes.Select(s => Written(s) + "\n"));

    private static string Written(Shape shape) => shape switch
    {
        BoxShape b => $"<rect x=\"{N(b.X)}\" y=\"{N(b.Y)}\" width=\"{N(b.W)}\" height=\"{N(b.H)}\" {(b.Opacity == 0 ? "fill=\"none\"" : $"fill=\"{b.Fill}\" fill-opacity=\"{N(b.Opacity)}\"")}{Outlined(b.Outline)}/>",
        LineShape l => $"<line x1=\"{N(l.X1)}\" y1=\"{N(l.Y1)}\" x2=\"{N(l.X2)}\" y2=\"{N(l.Y2)}\" stroke=\"currentColor\"{(l.Thick == 1 ? "" : $" stroke-width=\"{N(l.Thick)}\"")}{(l.IsDashed ? " stroke-dasharray=\"5 4\"" : "")}/>",
        SignShape s => Signed(s),
        WordsShape w => $"<text x=\"{N(w.X)}\" y=\"{N(w.Y)}\" {(w.Anchor == "start" ? "" : $"text-anchor=\"{w.Anchor}\" ")}font-size=\"{N(w.Size)}\">{Page.Safe(w.Text)}</text>",
        _ => "",
    };

    private static string Outlined(Outline outline) => outline switch
    {
        Outline.Whole => " stroke=\"currentColor\"",
        Outline.Dashed => " stroke=\"currentColor\" stroke-dasharray=\"4 3\"",
        Outline.Thick => " stroke=\"currentColor\" stroke-width=\"3\"",
        _ => "",
    };

    private static string Signed(SignShape s) => s.Sign switch
    {
        Sign.Dot => $"<circle cx=\"{N(s.X)}\" cy=\"{N(s.Y)}\" r=\"6\"/>",
        Sign.Ring => $"<circle cx=\"{N(s.X)}\" cy=\"{N(s.Y)}\" r=\"5\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2\"/>",
        Sign.Diamond => $"<path d=\"M{N(s.X)} {N(s.Y - 8)}L{N(s.X + 8)} {N(s.Y)}L{N(s.X)} {N(s.Y + 8)}L{N(s.X - 8)} {N(s.Y)}Z\"/>",
        _ => $"<path d=\"M{N(s.X - 5)} {N(s.Y - 5)}L{N(s.X + 5)} {N(s.Y + 5)}M{N(s.X - 5)} {N(s.Y + 5)}L{N(s.X + 5)} {N(s.Y - 5)}\" stroke=\"currentColor\" stroke-width=\"3\" fill=\"none\"/>",
    };

    private static string N(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);
}
