namespace RebuildApi.Server.Pages;

/// <summary>One thing in a drawing, in user units from the top left.</summary>
public abstract record Shape;

/// <summary>A filled rectangle.</summary>
/// <param name="X">Left.</param>
/// <param name="Y">Top.</param>
/// <param name="W">Width.</param>
/// <param name="H">Height.</param>
/// <param name="Fill">Colour of its inside.</param>
/// <param name="Opacity">How much of that colour.</param>
/// <param name="Outline">Its outline.</param>
public sealed record BoxShape(double X, double Y, double W, double H, string Fill, double Opacity, Outline Outline) : Shape;

/// <summary>A line.</summary>
/// <param name="X1">From.</param>
/// <param name="Y1">From.</param>
/// <param name="X2">To.</param>
/// <param name="Y2">To.</param>
/// <param name="Thick">How thick.</param>
/// <param name="IsDashed">Whether dashed.</param>
public sealed record LineShape(double X1, double Y1, double X2, double Y2, double Thick, bool IsDashed) : Shape;

/// <summary>A sign that tells a state by its form alone.</summary>
/// <param name="X">Middle.</param>
/// <param name="Y">Middle.</param>
/// <param name="Sign">Which.</param>
public sealed record SignShape(double X, double Y, Sign Sign) : Shape;

/// <summary>Words.</summary>
/// <param name="X">Where they are anchored.</param>
/// <param name="Y">Their base line.</param>
/// <param name="Text">The words.</param>
/// <param name="Anchor"><c>start</c>, <c>middle</c> or <c>end</c>.</param>
/// <param name="Size">Size of the letters.</param>
public sealed record WordsShape(double X, double Y, string Text, string Anchor, double Size) : Shape;

/// <summary>The outline of a box.</summary>
public enum Outline
{
    /// <summary>None.</summary>
    None,

    /// <summary>A line all around.</summary>
    Whole,

    /// <summary>A dashed line all around.</summary>
    Dashed,

    /// <summary>A thick line all around.</summary>
    Thick,
}

/// <summary>The forms that states have.</summary>
public enum Sign
{
    /// <summary>A dot: good.</summary>
    Dot,

    /// <summary>A filled square on its corner: doubtful.</summary>
    Diamond,

    /// <summary>A cross: not good.</summary>
    Cross,

    /// <summary>A ring: not known.</summary>
    Ring,
}
