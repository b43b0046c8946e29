namespace RebuildApi.Server.Pages;

/// <summary>A finished drawing.</summary>
/// <param name="Svg">What is in it.</param>
/// <param name="Height">How high it came out.</param>
public sealed record Drawn(Svg Svg, double Height)
{
    /// <summary>For a page.</summary>
    public string Inside => Svg.Inside(Height);

    /// <summary>As an answer of its own.</summary>
    public IResult AsAnswer() => TypedResults.Text(Svg.Document(Height), "image/svg+xml", System.Text.Encoding.UTF8);
}
