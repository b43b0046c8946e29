using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;

namespace RebuildApi.Engine.Pairings;

/// <summary>What is known of a value, on the scale of its dimension: lengths in whole nanometres, so that window ends stay inclusive.</summary>
/// <param name="Scale">Its scale.</param>
/// <param name="Point">The value; none when only bounds are known.</param>
/// <param name="Low">A lower bound, if one is known.</param>
/// <param name="High">An upper bound, if one is known.</param>
/// <param name="Uncertainty">Standard uncertainty.</param>
/// <param name="DegreesOfFreedom">Its degrees of freedom; none means infinite.</param>
internal readonly record struct Known(Scale Scale, double? Point, double? Low, double? High, double Uncertainty, double? DegreesOfFreedom)
{
    /// <summary>What an estimate knows; null when it has neither a value nor a bound of that dimension.</summary>
    public static Known? From(Estimate estimate, Dimension dimension)
    {
        var scale = new Scale(dimension);
        var (point, low, high) = (scale.Of(estimate.Value), scale.Of(estimate.Low), scale.Of(estimate.High));
        return point is null && low is null && high is null
            ? null
            : new Known(scale, point, low, high, estimate.StandardUncertainty / scale.InSi, estimate.DegreesOfFreedom);
    }

    /// <summary>A value without any doubt.</summary>
    public static Known Exactly(Quantity value)
    {
        var scale = new Scale(value.Kind);
        return new Known(scale, scale.Of(value), null, null, 0, null);
    }

    /// <summary>The value in SI; none when only bounds are known.</summary>
    public double? Si => Point * Scale.InSi;

    /// <summary>Sum of two independent values.</summary>
    public static Known operator +(Known a, Known b) => a with
    {
        Point = a.Point + b.Point,
        Low = a.Low + b.Low,
        High = a.High + b.High,
        Uncertainty = double.Hypot(a.Uncertainty, b.Uncertainty),
        DegreesOfFreedom = WelchSatterthwaite(a, b),
    };

    /// <summary>Difference of two independent values.</summary>
    public static Known operator -(Known a, Known b) => a + (b with { Point = -b.Point, Low = -b.High, High = -b.Low });

    /// <summary>The value in SI times a positive number, as a plain number.</summary>
    public Known AsRatio(double factor)
    {
        var perStep = Scale.InSi * factor;
        return new Known(new Scale(Dimension.Ratio), Point * perStep, Low * perStep, High * perStep, Uncertainty * perStep, DegreesOfFreedom);
    }

    /// <summary>The size of a value that is known, without its sign and its bounds.</summary>
    public Known Size() => this with { Point = Point is { } p ? Math.Abs(p) : null, Low = null, High = null };

    /// <summary>ν = u⁴ / Σ ui⁴/νi (JCGM 100:2008, G.4.1); infinite when both are.</summary>
    private static double? WelchSatterthwaite(Known a, Known b)
    {
        var shares = Share(a) + Share(b);
        return shares > 0 ? Math.Pow(double.Hypot(a.Uncertainty, b.Uncertainty), 4) / shares : null;
    }

    private static double Share(Known x) => x.DegreesOfFreedom is { } nu && x.Uncertainty > 0 ? Math.Pow(x.Uncertainty, 4) / nu : 0;
}
