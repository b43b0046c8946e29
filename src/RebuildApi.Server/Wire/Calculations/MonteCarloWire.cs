using RebuildApi.Contracts;
using RebuildApi.Engine.MonteCarlo;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>What a propagation found.</summary>
/// <param name="Mean">Mean.</param>
/// <param name="StandardUncertainty">Standard deviation.</param>
/// <param name="Symmetric">Interval with equal chances on both sides.</param>
/// <param name="Shortest">Shortest interval.</param>
/// <param name="ChanceWithin">Share of the trials in the window, where one was sent.</param>
/// <param name="Trials">Trials that were run.</param>
/// <param name="Tolerance">Numerical tolerance that the digits asked for allow.</param>
/// <param name="Stable">Whether mean, uncertainty and ends were found within the tolerance.</param>
public sealed record MonteCarloWire(
    QuantityWire Mean,
    QuantityWire StandardUncertainty,
    IntervalWire Symmetric,
    IntervalWire Shortest,
    double? ChanceWithin,
    int Trials,
    QuantityWire Tolerance,
    bool Stable)
{
    /// <summary>From the engine; values in SI.</summary>
    public static MonteCarloWire From(MonteCarloResult r, double? low, double? high, Dimension dimension, Display show) => new(
        show.Si(r.Mean, dimension),
        show.Difference(r.StandardUncertainty, dimension),
        IntervalWire.From(r.Symmetric, dimension, show),
        IntervalWire.From(r.Shortest, dimension, show),
        low is null && high is null ? null : Numbers.Finite(r.ChanceWithin(low, high)),
        r.Trials,
        show.Difference(r.Tolerance, dimension),
        r.IsStable);
}

/// <summary>An interval.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
/// <param name="Width">High minus low.</param>
public sealed record IntervalWire(QuantityWire Low, QuantityWire High, QuantityWire Width)
{
    /// <summary>From the engine.</summary>
    public static IntervalWire From(CoverageInterval i, Dimension dimension, Display show) =>
        new(show.Si(i.Low, dimension), show.Si(i.High, dimension), show.Difference(i.Width, dimension));
}
