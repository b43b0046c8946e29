namespace RebuildApi.Engine.Mechanics;

/// <summary>A sleeve that is drawn in, and what stops it.</summary>
/// <param name="Travel">How far the sleeve can go from neutral, m.</param>
/// <param name="TravelNeeded">Travel at which the teeth are in to full depth, m.</param>
/// <param name="TravelToBottom">Travel at which it runs against gear or ring, m; none when nothing is in the way.</param>
/// <param name="IsStopped">Whether a stop takes the thrust.</param>
/// <param name="Thrust">Axial force that draws the sleeve in, N; not negative.</param>
/// <param name="PadArea">Area of the fork's pads together, m².</param>
/// <param name="PadRadius">Mean radius of the groove, m.</param>
/// <param name="Speed">Speed of the sleeve, rad/s.</param>
public sealed record SleeveTravelInput(
    double Travel,
    double TravelNeeded,
    double? TravelToBottom,
    bool IsStopped,
    double Thrust,
    double PadArea,
    double PadRadius,
    double Speed);

/// <summary>Where the sleeve ends and what its fork carries.</summary>
/// <param name="OverTravel">Travel beyond full depth, m; negative: the teeth are not fully in.</param>
/// <param name="ToBottom">Travel left before it bottoms, m; none when nothing is in the way.</param>
/// <param name="ForkLoad">N; the stop takes it when there is one.</param>
/// <param name="PadPressure">p, Pa.</param>
/// <param name="RubbingSpeed">v = r·ω, m/s.</param>
/// <param name="PressureVelocity">p·v, Pa·m/s. Bronze carries about 2 MPa·m/s for long (from memory, common practice).</param>
public sealed record SleeveTravelResult(
    double OverTravel, double? ToBottom, double ForkLoad, double PadPressure, double RubbingSpeed, double PressureVelocity);

/// <summary>Over-travel, and the load of the fork's pads with and without a travel stop. Derived here, no source.</summary>
public static class SleeveTravel
{
    /// <summary>Solves it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The pad area is not positive, or the thrust is negative.</exception>
    public static SleeveTravelResult Solve(SleeveTravelInput input)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.PadArea);
        ArgumentOutOfRangeException.ThrowIfNegative(input.Thrust);
        var load = input.IsStopped ? 0 : input.Thrust;
        var pressure = load / input.PadArea;
        var rubbing = input.PadRadius * Math.Abs(input.Speed);
        return new SleeveTravelResult(
            input.Travel - input.TravelNeeded, input.TravelToBottom - input.Travel, load, pressure, rubbing, pressure * rubbing);
    }
}
