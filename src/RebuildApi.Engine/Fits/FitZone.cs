using RebuildApi.Contracts;

namespace RebuildApi.Engine.Fits;

/// <summary>The limits of a hole or a shaft of a tolerance class.</summary>
/// <param name="Nominal">Nominal size.</param>
/// <param name="Class">As it was asked for: <c>H7</c>, <c>g6</c>.</param>
/// <param name="Lower">Lower deviation from nominal.</param>
/// <param name="Upper">Upper deviation from nominal.</param>
/// <param name="Source">Where the numbers come from.</param>
public sealed record FitZone(Length Nominal, string Class, Length Lower, Length Upper, Source Source)
{
    /// <summary>Smallest size.</summary>
    public Length Smallest => Nominal + Lower;

    /// <summary>Largest size.</summary>
    public Length Largest => Nominal + Upper;
}

/// <summary>A hole and a shaft together.</summary>
/// <param name="Hole">The hole.</param>
/// <param name="Shaft">The shaft.</param>
public sealed record Fit(FitZone Hole, FitZone Shaft)
{
    /// <summary>Smallest clearance; negative is the largest interference.</summary>
    public Length LeastClearance => Hole.Lower - Shaft.Upper;

    /// <summary>Largest clearance; negative is the smallest interference.</summary>
    public Length MostClearance => Hole.Upper - Shaft.Lower;
}
