namespace RebuildApi.Engine.Mechanics;

/// <summary>One shift.</summary>
/// <param name="Inertia">J, turned by the cone, kg·m².</param>
/// <param name="SpeedDifference">Δω, rad/s; its size counts.</param>
/// <param name="ConeTorque">Tc, N·m.</param>
/// <param name="DragTorque">Td, N·m; it helps an upshift and hinders a downshift.</param>
/// <param name="IsUpshift">Which it is.</param>
/// <param name="ConeArea">m².</param>
/// <param name="ConeRadius">R, m.</param>
public sealed record SynchronizingInput(
    double Inertia, double SpeedDifference, double ConeTorque, double DragTorque, bool IsUpshift, double ConeArea, double ConeRadius);

/// <summary>Time and heat of a shift. Published caps of materials are for comparison, not a rating.</summary>
/// <param name="Energy">E = ½·J·Δω², J.</param>
/// <param name="Time">t = J·Δω/(Tc ± Td), s; infinite when drag is not overcome.</param>
/// <param name="MeanPower">E/t, W.</param>
/// <param name="EnergyPerArea">J/m².</param>
/// <param name="MeanPowerPerArea">W/m².</param>
/// <param name="PeakPowerPerArea">Tc·Δω/A, W/m².</param>
/// <param name="SlidingSpeed">R·Δω, m/s.</param>
public sealed record SynchronizingResult(
    double Energy, double Time, double MeanPower, double EnergyPerArea, double MeanPowerPerArea, double PeakPowerPerArea, double SlidingSpeed);

/// <summary>Time, energy and power of synchronizing. Derived here from the momentum of the part that is brought to speed.</summary>
public static class SynchronizingHeat
{
    /// <summary>Solves one shift.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The inertia or the area is not positive.</exception>
    public static SynchronizingResult Solve(SynchronizingInput input)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.Inertia);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.ConeArea);
        var speed = Math.Abs(input.SpeedDifference);
        var energy = 0.5 * input.Inertia * speed * speed;
        var torque = input.ConeTorque + (input.IsUpshift ? input.DragTorque : -input.DragTorque);
        var time = torque > 0 ? input.Inertia * speed / torque : double.PositiveInfinity;
        var power = time > 0 ? energy / time : 0;
        return new SynchronizingResult(
            energy,
            time,
            power,
            energy / input.ConeArea,
            power / input.ConeArea,
            input.ConeTorque * speed / input.ConeArea,
            input.ConeRadius * speed);
    }

    /// <summary>How much one shift warms a ring, K: share·E/(m·c).</summary>
    /// <param name="energy">E, J.</param>
    /// <param name="share">Share that goes into the ring, 0..1.</param>
    /// <param name="mass">m, kg; positive.</param>
    /// <param name="specificHeat">c, J/(kg·K); positive.</param>
    public static double RingTemperatureRise(double energy, double share, double mass, double specificHeat)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mass);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(specificHeat);
        return share * energy / (mass * specificHeat);
    }
}
