using CsCheck;
using RebuildApi.Engine.Mechanics;
using static RebuildApi.Engine.Tests.Mechanics.Angles;

namespace RebuildApi.Engine.Tests.Mechanics;

public sealed class EngagementFlanksTests
{
    private const double Torque = 400, Radius = 0.041;

    /// <summary>400 N·m on 41 mm at both splines: Fc = 9756 N. Computed here, no source.</summary>
    [Theory]
    [InlineData(5.0, 854)]
    [InlineData(3.5, 597)]
    [InlineData(0, 0)]
    [InlineData(-3.0, -511)]
    [InlineData(-6.0, -1025)]
    public void Flank_force_without_friction_to_its_printed_digits(double degrees, double newtons)
    {
        var forces = Solve(degrees, 0.1, 0);
        Assert.Equal(9756, forces.EngagementForce, 0.5);
        Assert.Equal(newtons, forces.FlankForce, 0.5);
    }

    /// <summary>Pull-out with friction at the teeth alone, 0.10. Computed here, no source.</summary>
    [Theory]
    [InlineData(5.0, 1845)]
    [InlineData(3.5, 1582)]
    [InlineData(0, 976)]
    [InlineData(-3.0, 462)]
    [InlineData(-6.0, -49)]
    public void Pull_out_with_one_interface_to_its_printed_digits(double degrees, double newtons) =>
        Assert.Equal(newtons, Solve(degrees, 0.1, 0).PullOut, 0.5);

    /// <summary>Pull-out with friction at teeth and hub. Computed here, no source.</summary>
    [Theory]
    [InlineData(3.5, 0.10, 2558)]
    [InlineData(3.5, 0.05, 1576)]
    [InlineData(3.5, 0.02, 988)]
    [InlineData(0, 0.10, 1951)]
    [InlineData(0, 0.05, 976)]
    [InlineData(0, 0.02, 390)]
    [InlineData(-3.0, 0.10, 1438)]
    [InlineData(-3.0, 0.05, 464)]
    [InlineData(-3.0, 0.02, -121)]
    [InlineData(-6.0, 0.10, 926)]
    [InlineData(-6.0, 0.05, -47)]
    [InlineData(-6.0, 0.02, -633)]
    public void Pull_out_with_both_interfaces_to_its_printed_digits(double degrees, double friction, double newtons) =>
        Assert.Equal(newtons, Solve(degrees, friction, friction).PullOut, 0.5);

    [Fact]
    public void Three_degrees_of_forward_taper_beat_the_detent_once_vibration_relieves_friction()
    {
        // Computed here, no source: a 60 N ball on a 45 degree notch, friction 0.10, holds 73 N; the leaned flank pushes with 121 N.
        Assert.Equal(73, WalkOut.DetentForce(60, Degrees(45), 0.1), 0.5);
        Assert.True(Solve(-3, 0.02, 0.02).Expulsion > WalkOut.DetentForce(60, Degrees(45), 0.1));
    }

    /// <summary>Computed here, no source.</summary>
    [Theory]
    [InlineData(0.05, 2.86)]
    [InlineData(0.08, 4.57)]
    [InlineData(0.10, 5.71)]
    [InlineData(0.15, 8.53)]
    public void Forward_taper_that_friction_holds_to_its_printed_digits(double friction, double degrees) =>
        Assert.Equal(degrees, InDegrees(EngagementFlanks.HoldingLimit(friction, 0, 1)), 0.005);

    /// <summary>Shape published in the abstract of WO 2007/055624; figures computed here.</summary>
    [Theory]
    [InlineData(0.10, 11.3)]
    [InlineData(0.03, 3.4)]
    public void Back_taper_that_feeds_itself_in_to_its_printed_digits(double friction, double degrees) =>
        Assert.Equal(degrees, InDegrees(EngagementFlanks.SelfFeedingAngle(friction, friction, 1)), 0.05);

    [Fact]
    public void A_rigid_back_tapered_sleeve_on_straight_teeth_draws_nothing_in_when_fresh()
    {
        Assert.Equal(0, EngagementFlanks.FreshAngle(0, Degrees(4)));
        Assert.Equal(Degrees(4), EngagementFlanks.BeddedAngle(Degrees(4)));
    }

    [Fact]
    public void A_straight_sleeve_on_back_tapered_teeth_rides_their_edge_and_is_not_drawn_in() =>
        Assert.Equal(0, EngagementFlanks.FreshAngle(Degrees(4), 0));

    [Fact]
    public void Leaned_teeth_act_with_their_own_flank_whatever_the_sleeve_until_bedded_in() =>
        Assert.Equal(Degrees(-3), EngagementFlanks.FreshAngle(Degrees(-3), Degrees(4)));

    [Fact]
    public void Reversing_torque_swaps_drive_and_coast() => Gen.Select(Gen.Double[1, 1000], Gen.Double[-0.2, 0.2], Gen.Double[-0.2, 0.2]).Sample(
        (torque, drive, coast) =>
            EngagementFlanks.AngleUnder(torque, drive, coast).Equals(EngagementFlanks.AngleUnder(-torque, coast, drive))
            && EngagementFlanks.Solve(new FlankInput(torque, Radius, Radius, drive, 0.05, 0.05))
                == EngagementFlanks.Solve(new FlankInput(-torque, Radius, Radius, drive, 0.05, 0.05)));

    [Fact]
    public void Friction_to_zero_leaves_the_flank_force() => Gen.Double[-0.3, 0.3].Sample(angle =>
    {
        var bare = EngagementFlanks.Solve(new FlankInput(Torque, Radius, Radius, angle, 0, 0));
        var nearly = EngagementFlanks.Solve(new FlankInput(Torque, Radius, Radius, angle, 1e-9, 1e-9));
        return bare.PullOut.Equals(bare.FlankForce) && bare.DrawIn.Equals(bare.FlankForce) && Math.Abs(nearly.PullOut - bare.FlankForce) < 1e-3;
    });

    [Fact]
    public void More_taper_never_holds_less() => Gen.Select(Gen.Double[-0.3, 0.3], Gen.Double[0, 0.1], Gen.Double[0, 0.15]).Sample((angle, more, friction) =>
        EngagementFlanks.Solve(new FlankInput(Torque, Radius, Radius, angle + more, friction, friction)).PullOut
            >= EngagementFlanks.Solve(new FlankInput(Torque, Radius, Radius, angle, friction, friction)).PullOut);

    [Fact]
    public void At_the_holding_limit_nothing_holds_and_nothing_pushes() => Gen.Select(Gen.Double[0.01, 0.15], Gen.Double[0, 0.15]).Sample((teeth, hub) =>
        Math.Abs(EngagementFlanks.Solve(new FlankInput(Torque, Radius, Radius, -EngagementFlanks.HoldingLimit(teeth, hub, 1), teeth, hub)).PullOut) < 1e-6);

    private static FlankForces Solve(double degrees, double teeth, double hub) =>
        EngagementFlanks.Solve(new FlankInput(Torque, Radius, Radius, Degrees(degrees), teeth, hub));
}
