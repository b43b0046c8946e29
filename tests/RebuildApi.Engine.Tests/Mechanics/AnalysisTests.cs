using CsCheck;
using RebuildApi.Engine.Mechanics;
using static RebuildApi.Engine.Tests.Mechanics.Angles;

namespace RebuildApi.Engine.Tests.Mechanics;

public sealed class AnalysisTests
{
    [Fact]
    public void Teeth_leaned_on_the_drive_side_jump_out_under_load_and_not_on_the_overrun()
    {
        var result = EngagementAnalysis.Solve(new EngagementInput(400, 0.041, 0.041, Degrees(-3), 0, 0, 0, 0.02, 0.02));
        Assert.Equal(121, result.Drive.Fresh.Expulsion, 0.5);
        Assert.True(result.Coast.Fresh.Holds);
    }

    [Fact]
    public void A_back_tapered_sleeve_on_leaned_teeth_holds_only_once_bedded_in()
    {
        var result = EngagementAnalysis.Solve(new EngagementInput(400, 0.041, 0.041, Degrees(-3), 0, Degrees(3.5), Degrees(3.5), 0.02, 0.02));
        Assert.False(result.Drive.Fresh.Holds);
        Assert.True(result.Drive.Bedded.Holds);
    }

    [Fact]
    public void Swapping_drive_and_coast_flanks_swaps_the_answers() => Gen.Select(Angle, Angle, Angle, Angle).Sample((gearDrive, gearCoast, sleeveDrive, sleeveCoast) =>
    {
        var there = EngagementAnalysis.Solve(new EngagementInput(400, 0.04, 0.04, gearDrive, gearCoast, sleeveDrive, sleeveCoast, 0.05, 0.05));
        var back = EngagementAnalysis.Solve(new EngagementInput(-400, 0.04, 0.04, gearCoast, gearDrive, sleeveCoast, sleeveDrive, 0.05, 0.05));
        return there.Drive == back.Coast && there.Coast == back.Drive;
    });

    [Fact]
    public void Two_cones_block_at_a_blunter_chamfer_than_one_needs()
    {
        var cone = new Cone(0.10, 0.032, Degrees(7));
        var one = SynchronizerAnalysis.Solve(new SynchronizerInput(800, [cone], 0.037, Degrees(55), 0.09));
        var two = SynchronizerAnalysis.Solve(new SynchronizerInput(800, [cone, cone], 0.037, Degrees(55), 0.09));
        Assert.Equal(SynchronizerTorque.LeastChamferAngle(cone, 0.037, 0.09), one.LeastChamferAngle, 1e-12);
        Assert.True(two.LeastChamferAngle < one.LeastChamferAngle);
    }

    [Fact]
    public void A_lined_cone_too_steep_for_its_friction_is_named()
    {
        var result = SynchronizerAnalysis.Solve(new SynchronizerInput(800, [new Cone(0.14, 0.032, Degrees(7)), new Cone(0.10, 0.030, Degrees(7))], 0.037, Degrees(55), 0.09));
        Assert.Equal([false, true], result.Cones.Select(c => c.LetsGo));
        Assert.Equal(112, result.Cones[0].PullOffForce, 0.5);
    }

    private static Gen<double> Angle => Gen.Double[-0.1, 0.1];
}
