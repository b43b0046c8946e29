namespace RebuildApi.Server.Pages;

/// <summary>A straight scale from values to places on the paper.</summary>
/// <param name="Low">The value at the beginning.</param>
/// <param name="High">The value at the end.</param>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
public sealed record Scale(double Low, double High, double From, double To)
{
    /// <summary>One that holds all values, with a tenth of their span to spare on both sides.</summary>
    public static Scale Around(IEnumerable<double> values, double from, double to)
    {
        var all = values.ToArray();
        var (low, high) = (all.Min(), all.Max());
        var spare = high > low ? (high - low) / 10 : Math.Max(Math.Abs(high) / 10, 1e-6);
        return new Scale(low - spare, high + spare, from, to);
    }

    /// <summary>Where a value stands, kept on the paper.</summary>
    public double At(double value) => From + (To - From) * Math.Clamp((value - Low) / (High - Low), 0, 1);
}
