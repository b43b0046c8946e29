using RebuildApi.Contracts;

namespace RebuildApi.Engine.Mechanics;

/// <summary>
/// Which way helical gears thrust, as three signs; +x points along the shaft from input to output. A right-hand driver is thrust along its own
/// rotation vector and its mate the other way; on the overrun the roles change, so every thrust turns. Derived here, no source.
/// </summary>
public static class Thrust
{
    /// <summary>+1 toward the output, −1 toward the input, 0 for spur: hand × role × rotation.</summary>
    /// <param name="hand">Hand of this gear.</param>
    /// <param name="isDriver">Whether this gear drives its mate; on the overrun it is the other way round.</param>
    /// <param name="turnsAlongX">Whether its rotation vector points along +x (clockwise seen from the input).</param>
    public static int Direction(Hand hand, bool isDriver, bool turnsAlongX) =>
        HandSign(hand) * (isDriver ? 1 : -1) * (turnsAlongX ? 1 : -1);

    /// <summary>
    /// Net thrust of a countergear, N, positive in the direction in which its driven row is thrust: T·(tan β1/r1 ∓ tan β2/r2). With the same hand
    /// on both rows the thrusts oppose, because one row is driven and the other drives; with opposite hands they add.
    /// </summary>
    /// <param name="torque">T through the countergear, N·m.</param>
    /// <param name="driven">Its row in the constant mesh.</param>
    /// <param name="driving">Its row of the gear engaged.</param>
    public static double OfCountergear(double torque, ThrustRow driven, ThrustRow driving)
    {
        var own = Math.Abs(torque) * Math.Tan(Math.Abs(driven.HelixAngle)) / driven.PitchRadius;
        var other = Math.Abs(torque) * Math.Tan(Math.Abs(driving.HelixAngle)) / driving.PitchRadius;
        return own - (HandSign(driven.Hand) * HandSign(driving.Hand) * other);
    }

    /// <summary>The opposite hand; spur stays spur.</summary>
    public static Hand Mirrored(Hand hand) => hand switch
    {
        Hand.Right => Hand.Left,
        Hand.Left => Hand.Right,
        _ => Hand.Spur,
    };

    private static int HandSign(Hand hand) => hand switch
    {
        Hand.Right => 1,
        Hand.Left => -1,
        _ => 0,
    };
}

/// <summary>One row of a cluster.</summary>
/// <param name="Hand">Its hand.</param>
/// <param name="HelixAngle">β, rad; its size counts.</param>
/// <param name="PitchRadius">r, m; positive.</param>
public sealed record ThrustRow(Hand Hand, double HelixAngle, double PitchRadius);
