using System.Text;
using RebuildApi.Server.Results;

namespace RebuildApi.Server.Pages;

/// <summary>A finished drawing.</summary>
/// <param name="Sketch">What is in it.</param>
/// <param name="Height">How high it came out.</param>
public sealed record Drawn(Sketch Sketch, double Height)
{
    /// <summary>Media type of a drawing as lines.</summary>
    public const string Lines = "image/svg+xml";

    /// <summary>Media type of a drawing as dots.</summary>
    public const string Dots = "image/png";

    /// <summary>For a page.</summary>
    public string Inside => SvgWriter.Inside(this);

    /// <summary>As an answer of its own, in the form that was asked for.</summary>
    public IResult As(string form) => form == Dots
        ? new BytesAnswer(Painter.Png(this), Dots)
        : TypedResults.Text(SvgWriter.Document(this), Lines, Encoding.UTF8);
}
