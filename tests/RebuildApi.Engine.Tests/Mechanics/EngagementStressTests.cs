using RebuildApi.Engine.Mechanics;
using static RebuildApi.Engine.Tests.Mechanics.Angles;

namespace RebuildApi.Engine.Tests.Mechanics;

/// <summary>Computed here, no source.</summary>
public sealed class EngagementStressTests
{
    [Theory]
    [InlineData(1.0, 4.5, 37.6, 23.2, 0.05)]
    [InlineData(0.5, 4.5, 75, 46, 0.5)]
    [InlineData(1.0 / 3, 4.5, 113, 69.5, 0.5)]
    [InlineData(0.5, 3.0, 113, 69.5, 0.5)]
    [InlineData(0.5, 2.0, 169, 104, 0.5)]
    public void Thirty_six_small_teeth_carry_the_whole_torque(double share, double engagedMm, double contactMpa, double shearMpa, double half)
    {
        var stresses = EngagementStress.Solve(new EngagementStressInput(400 / 0.041, 36, share, 1.6e-3, engagedMm * 1e-3, 2.6e-3));
        Assert.Equal(contactMpa, stresses.Contact / 1e6, half);
        Assert.Equal(shearMpa, stresses.Shear / 1e6, half);
    }

    [Fact]
    public void A_gear_on_worn_needles_rocks_and_walks_the_sleeve_out()
    {
        var tilt = WalkOut.Tilt(0.06e-3, 25e-3);
        Assert.Equal(0.0024, tilt, 0.00005);
        Assert.Equal(8.3, InDegrees(tilt) * 60, 0.05);
        Assert.Equal(0.20, WalkOut.AxialSwing(41e-3, tilt) * 1e3, 0.005);
        Assert.Equal(0.56, WalkOut.AxialSwing(41e-3, WalkOut.Tilt(0.15e-3, 22e-3)) * 1e3, 0.005);
    }

    [Fact]
    public void Without_a_stop_the_fork_carries_the_thrust_and_burns()
    {
        var free = SleeveTravel.Solve(Sleeve(isStopped: false));
        Assert.Equal(3.1, free.PadPressure / 1e6, 0.05);
        Assert.Equal(14.1, free.RubbingSpeed, 0.05);
        Assert.Equal(44, free.PressureVelocity / 1e6, 0.5);
    }

    [Fact]
    public void With_a_stop_the_fork_carries_nothing() => Assert.Equal(0, SleeveTravel.Solve(Sleeve(isStopped: true)).PressureVelocity);

    [Fact]
    public void Travel_beyond_full_depth_is_what_is_left_over()
    {
        var result = SleeveTravel.Solve(Sleeve(isStopped: false));
        Assert.Equal(0.5e-3, result.OverTravel, 1e-12);
        Assert.Equal(0.3e-3, result.ToBottom!.Value, 1e-12);
    }

    private static SleeveTravelInput Sleeve(bool isStopped) => new(
        9.5e-3, 9.0e-3, 9.8e-3, isStopped, 597, 2 * 12e-3 * 8e-3, 0.045, PerSecond(3000));
}
