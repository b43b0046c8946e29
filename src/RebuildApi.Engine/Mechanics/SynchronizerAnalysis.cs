using System.Collections.Immutable;

namespace RebuildApi.Engine.Mechanics;

/// <summary>One cone of a synchronizer as it comes out.</summary>
/// <param name="Torque">N·m.</param>
/// <param name="LetsGo">Whether its ring lets go by itself.</param>
/// <param name="StickingAngle">The half-angle at and below which it would stick, rad.</param>
/// <param name="PullOffForce">N; 0 when it lets go.</param>
public sealed record ConeResult(double Torque, bool LetsGo, double StickingAngle, double PullOffForce);

/// <summary>A whole synchronizer.</summary>
/// <param name="Torques">Cone torque against index torque.</param>
/// <param name="LeastChamferAngle">Least chamfer angle at which it still blocks, rad.</param>
/// <param name="Cones">Each cone, in the order given.</param>
public sealed record SynchronizerResult(SynchronizerTorques Torques, double LeastChamferAngle, ImmutableArray<ConeResult> Cones);

/// <summary>Blocking and release of a synchronizer of one to three cones together.</summary>
public static class SynchronizerAnalysis
{
    /// <summary>Solves it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">As <see cref="SynchronizerTorque.Solve"/>.</exception>
    public static SynchronizerResult Solve(SynchronizerInput input)
    {
        var torques = SynchronizerTorque.Solve(input);
        // All cones as one: h = 90° − ρt − atan(Tc/(F·RI)), the angle at which the two torques are equal.
        var least = (Math.PI / 2) - Math.Atan(input.ChamferFriction) - Math.Atan(torques.ConeTorque / (input.Force * input.ChamferRadius));
        return new SynchronizerResult(torques, least, [.. input.Cones.Select(c => Of(input.Force, c))]);
    }

    private static ConeResult Of(double force, Cone cone) => new(
        SynchronizerTorque.ConeTorque(force, cone),
        ConeRelease.LetsGo(cone.HalfAngle, cone.Friction),
        ConeRelease.StickingAngle(cone.Friction),
        ConeRelease.PullOffForce(force, cone.HalfAngle, cone.Friction));
}
