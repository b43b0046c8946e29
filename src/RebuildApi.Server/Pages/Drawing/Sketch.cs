using RebuildApi.Contracts;

namespace RebuildApi.Server.Pages;

/// <summary>
/// A drawing as plain shapes, to be written as SVG or painted as PNG or into a PDF. It needs no style from anywhere: lines and letters take the colour of
/// the text around them, and every state is told by a form or a word as well.
/// </summary>
/// <param name="width">Width, in user units.</param>
/// <param name="title">What it shows, for those who can't see it.</param>
public sealed class Sketch(double width, string title)
{
    private readonly List<Shape> _shapes = [];

    /// <summary>Colour of a window.</summary>
    public const string Window = "#2f8a57";

    /// <summary>Colour of what is doubtful.</summary>
    public const string Doubt = "#c07a00";

    /// <summary>Colour of a part.</summary>
    public const string Part = "#2b7fa3";

    /// <summary>Width, in user units.</summary>
    public double Width => width;

    /// <summary>What it shows.</summary>
    public string Title => title;

    /// <summary>Its shapes, from the back to the front.</summary>
    public IReadOnlyList<Shape> Shapes => _shapes;

    /// <summary>A filled rectangle with an outline.</summary>
    public void Box(double x, double y, double w, double h, string fill, double opacity, Outline outline = Outline.Whole) => _shapes.Add(new BoxShape(x, y, Math.Max(w, 0.5), h, fill, opacity, outline));

    /// <summary>A band without an outline.</summary>
    public void Band(double x, double y, double w, double h, string fill, double opacity) => Box(x, y, w, h, fill, opacity, Outline.None);

    /// <summary>A line.</summary>
    public void Line(double x1, double y1, double x2, double y2, double thick = 1, bool dashed = false) => _shapes.Add(new LineShape(x1, y1, x2, y2, thick, dashed));

    /// <summary>A sign.</summary>
    public void Mark(double x, double y, Sign sign) => _shapes.Add(new SignShape(x, y, sign));

    /// <summary>Words; <paramref name="anchor"/> is <c>start</c>, <c>middle</c> or <c>end</c>.</summary>
    public void Text(double x, double y, string words, string anchor = "start", double size = 13) => _shapes.Add(new WordsShape(x, y, words, anchor, size));

    /// <summary>The sign of an outcome.</summary>
    public static Sign Of(Outcome outcome) => outcome switch
    {
        Outcome.Conforming => Sign.Dot,
        Outcome.Nonconforming => Sign.Cross,
        Outcome.Inconclusive => Sign.Diamond,
        _ => Sign.Ring,
    };
}
