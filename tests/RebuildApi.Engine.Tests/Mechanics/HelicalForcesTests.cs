using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;
using static RebuildApi.Engine.Tests.Mechanics.Angles;

namespace RebuildApi.Engine.Tests.Mechanics;

public sealed class HelicalForcesTests
{
    /// <summary>Mechanical Engineering Design (Shigley), helical gear of 800 lbf, φn 20°, ψ 30°: the problem is published, the answers are computed here.</summary>
    [Fact]
    public void Eight_hundred_pounds_on_a_thirty_degree_helix()
    {
        var forces = HelicalForces.Solve(new HelicalInput(800, 1, Degrees(30), Degrees(20)));
        Assert.Equal(22.795877, InDegrees(forces.TransversePressureAngle), 5e-7);
        Assert.Equal(336.2213, forces.Radial, 5e-5);
        Assert.Equal(461.8802, forces.Axial, 5e-5);
        Assert.Equal(983.0453, forces.Total, 5e-5);
    }

    /// <summary>Gear force example of a published text: 125 lbf·in on a pitch diameter of 1.63 in prints 153.37 lbf.</summary>
    [Fact]
    public void Tangential_force_from_torque() =>
        Assert.Equal(153.37, HelicalForces.Solve(new HelicalInput(125, 1.63 / 2, 0, Degrees(20))).Tangential, 0.005);

    /// <summary>15 kW at 1000 rev/min, ψ 0.50 rad, φn 0.35 rad, d 70 mm: the problem is from a textbook, the answers are computed here.</summary>
    [Fact]
    public void Fifteen_kilowatts_on_a_seventy_millimetre_gear()
    {
        var torque = HelicalForces.Torque(15_000, PerSecond(1000));
        var forces = HelicalForces.Solve(new HelicalInput(torque, 0.035, 0.50, 0.35));
        Assert.Equal(143.239449, torque, 5e-7);
        Assert.Equal(4092.5557, forces.Tangential, 5e-5);
        Assert.Equal(2235.7734, forces.Axial, 5e-5);
        Assert.Equal(1702.2893, forces.Radial, 5e-5);
    }

    /// <summary>1 hp at 1750 rev/min, 18 teeth, normal pitch 12 per inch, φn 20°, ψ 30° (Shigley's problem; answers computed here).</summary>
    [Fact]
    public void One_horsepower_on_eighteen_teeth()
    {
        var diameter = 18 / (12 * Math.Cos(Degrees(30)));
        var forces = HelicalForces.Solve(new HelicalInput(33_000 * 12 / (2 * Math.PI * 1750), diameter / 2, Degrees(30), Degrees(20)));
        Assert.Equal(41.58595, forces.Tangential, 5e-6);
        Assert.Equal(17.47760, forces.Radial, 5e-6);
        Assert.Equal(24.00966, forces.Axial, 5e-6);
        Assert.Equal(51.10109, forces.Total, 5e-6);
    }

    /// <summary>Computed here, no source.</summary>
    [Fact]
    public void A_gearbox_gear_thrusts_and_tilts()
    {
        var forces = HelicalForces.Solve(new HelicalInput(400, 0.040, Degrees(25), Degrees(18)));
        Assert.Equal(10_000, forces.Tangential, 0.5);
        Assert.Equal(4663, forces.Axial, 0.5);
        Assert.Equal(3585, forces.Radial, 0.5);
        Assert.Equal(187, forces.TiltingMoment, 0.5);
    }

    [Fact]
    public void Mirroring_hands_mirrors_thrust() => Gears.Sample((hand, drives, turns) =>
        Thrust.Direction(Thrust.Mirrored(hand), drives, turns) == -Thrust.Direction(hand, drives, turns));

    [Fact]
    public void Going_from_drive_to_overrun_turns_every_thrust() => Gears.Sample((hand, drives, turns) =>
        Thrust.Direction(hand, !drives, turns) == -Thrust.Direction(hand, drives, turns));

    [Fact]
    public void Mates_thrust_against_each_other() => Gears.Sample((hand, drives, turns) =>
        Thrust.Direction(Thrust.Mirrored(hand), !drives, !turns) == -Thrust.Direction(hand, drives, turns));

    [Fact]
    public void A_right_hand_driver_is_thrust_along_its_own_rotation_vector() => Assert.Equal(1, Thrust.Direction(Hand.Right, true, true));

    [Fact]
    public void Same_hands_on_a_countergear_cancel_where_tangent_over_radius_agrees()
    {
        var first = new ThrustRow(Hand.Left, Degrees(30), 0.05);
        var second = new ThrustRow(Hand.Left, Math.Atan(Math.Tan(Degrees(30)) * 0.03 / 0.05), 0.03);
        Assert.Equal(0, Thrust.OfCountergear(400, first, second), 1e-9);
    }

    [Fact]
    public void A_cluster_of_swapped_hand_adds_its_thrusts()
    {
        var (first, second) = (new ThrustRow(Hand.Left, 0.4, 0.05), new ThrustRow(Hand.Left, 0.5, 0.03));
        var right = Thrust.OfCountergear(400, first, second);
        var wrong = Thrust.OfCountergear(400, first, second with { Hand = Hand.Right });
        Assert.True(Math.Abs(wrong) > Math.Abs(right));
        Assert.Equal(400 * (Math.Tan(0.4) / 0.05 + Math.Tan(0.5) / 0.03), wrong, 1e-9);
    }

    private static Gen<(Hand, bool, bool)> Gears => Gen.Select(Gen.Enum<Hand>(), Gen.Bool, Gen.Bool);
}
