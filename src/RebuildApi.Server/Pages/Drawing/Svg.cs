using System.Globalization;
using System.Text;

namespace RebuildApi.Server.Pages;

/// <summary>
/// A drawing in SVG 2 that needs no style from anywhere: lines and letters take the colour of the text around them, and every state is told by a
/// shape or a word as well.
/// </summary>
/// <param name="width">Width, in user units.</param>
/// <param name="title">What it shows, for those who can't see it.</param>
public sealed class Svg(double width, string title)
{
    private readonly StringBuilder _inside = new();

    /// <summary>Colour of a window.</summary>
    public const string Window = "#2f8a57";

    /// <summary>Colour of what is doubtful.</summary>
    public const string Doubt = "#c07a00";

    /// <summary>Colour of a part.</summary>
    public const string Part = "#2b7fa3";

    /// <summary>A filled rectangle with an outline.</summary>
    public void Box(double x, double y, double w, double h, string fill, double opacity, bool dashed = false) => Add(
        $"<rect x=\"{N(x)}\" y=\"{N(y)}\" width=\"{N(Math.Max(w, 0.5))}\" height=\"{N(h)}\" fill=\"{fill}\" fill-opacity=\"{N(opacity)}\" stroke=\"currentColor\" stroke-width=\"1\"{(dashed ? " stroke-dasharray=\"4 3\"" : "")}/>");

    /// <summary>A band without an outline.</summary>
    public void Band(double x, double y, double w, double h, string fill, double opacity) => Add(
        $"<rect x=\"{N(x)}\" y=\"{N(y)}\" width=\"{N(Math.Max(w, 0.5))}\" height=\"{N(h)}\" fill=\"{fill}\" fill-opacity=\"{N(opacity)}\"/>");

    /// <summary>A line.</summary>
    public void Line(double x1, double y1, double x2, double y2, double thick = 1, bool dashed = false) => Add(
        $"<line x1=\"{N(x1)}\" y1=\"{N(y1)}\" x2=\"{N(x2)}\" y2=\"{N(y2)}\" stroke=\"currentColor\" stroke-width=\"{N(thick)}\"{(dashed ? " stroke-dasharray=\"5 4\"" : "")}/>");

    /// <summary>A round mark, or a square on its corner for what is not good.</summary>
    public void Mark(double x, double y, bool good) => Add(good
        ? $"<circle cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"6\" fill=\"currentColor\"/>"
        : $"<path d=\"M{N(x)} {N(y - 8)}L{N(x + 8)} {N(y)}L{N(x)} {N(y + 8)}L{N(x - 8)} {N(y)}Z\" fill=\"currentColor\"/>");

    /// <summary>Words; <paramref name="anchor"/> is <c>start</c>, <c>middle</c> or <c>end</c>.</summary>
    public void Text(double x, double y, string words, string anchor = "start", double size = 13) => Add(
        $"<text x=\"{N(x)}\" y=\"{N(y)}\" text-anchor=\"{anchor}\" font-size=\"{N(size)}\" fill=\"currentColor\">{Page.Safe(words)}</text>");

    /// <summary>The drawing for a page, which takes its colours from there.</summary>
    public string Inside(double height) =>
        $"<svg viewBox=\"0 0 {N(width)} {N(height)}\" role=\"img\" font-family=\"system-ui, sans-serif\"><title>{Page.Safe(title)}</title>{_inside}</svg>";

    /// <summary>The drawing as a document of its own, dark on white.</summary>
    public string Document(double height) => $"""
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {N(width)} {N(height)}" width="{N(width)}" height="{N(height)}" role="img" color="#16202a" font-family="system-ui, sans-serif"><title>{Page.Safe(title)}</title><rect width="100%" height="100%" fill="#ffffff"/>{_inside}</svg>
        """;

    private static string N(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    private void Add(string element) => _inside.Append(element).Append('\n');
}
