using CsCheck;
using RebuildApi.Engine.Mechanics;
using static RebuildApi.Engine.Tests.Mechanics.Angles;

namespace RebuildApi.Engine.Tests.Mechanics;

public sealed class SynchronizerTests
{
    private static readonly Cone s_cone = new(0.10, 0.032, Degrees(7));

    /// <summary>F 800 N, R 32, α 7°, μ 0.10, RI 37, μt 0.09. Computed here, no source.</summary>
    [Theory]
    [InlineData(45, 24.7, 0.85, BlockingBand.Clash)]
    [InlineData(50, 20.6, 1.02, BlockingBand.Marginal)]
    [InlineData(55, 17.0, 1.24, BlockingBand.Blocks)]
    [InlineData(60, 13.7, 1.53, BlockingBand.HardShift)]
    public void Chamfer_angle_decides_between_clash_and_hard_shift(double chamfer, double index, double ratio, BlockingBand band)
    {
        var torques = Solve(s_cone, chamfer);
        Assert.Equal(21.0, torques.ConeTorque, 0.05);
        Assert.Equal(index, torques.IndexTorque, 0.05);
        Assert.Equal(ratio, torques.BlockingRatio, 0.005);
        Assert.Equal(band, torques.Band);
    }

    /// <summary>The same ring at 52.5°, as oil or glazing lowers its friction. Computed here, no source.</summary>
    [Theory]
    [InlineData(0.10, 21.0, 1.12, BlockingBand.Blocks)]
    [InlineData(0.09, 18.9, 1.01, BlockingBand.Marginal)]
    [InlineData(0.08, 16.8, 0.90, BlockingBand.Clash)]
    [InlineData(0.06, 12.6, 0.67, BlockingBand.Clash)]
    public void Wrong_oil_takes_the_same_hardware_from_blocking_to_clash(double friction, double cone, double ratio, BlockingBand band)
    {
        var torques = Solve(s_cone with { Friction = friction }, 52.5);
        Assert.Equal(cone, torques.ConeTorque, 0.05);
        Assert.Equal(ratio, torques.BlockingRatio, 0.005);
        Assert.Equal(band, torques.Band);
    }

    /// <summary>Computed here, no source.</summary>
    [Theory]
    [InlineData(0.12, 44.4)]
    [InlineData(0.10, 49.5)]
    [InlineData(0.08, 55.3)]
    [InlineData(0.07, 58.4)]
    public void Least_chamfer_angle_that_blocks_to_its_printed_digits(double friction, double degrees) =>
        Assert.Equal(degrees, InDegrees(SynchronizerTorque.LeastChamferAngle(s_cone with { Friction = friction }, 0.037, 0.09)), 0.05);

    [Fact]
    public void At_the_least_chamfer_angle_the_ratio_is_one() => Gen.Double[0.05, 0.15].Sample(friction =>
    {
        var cone = s_cone with { Friction = friction };
        var least = SynchronizerTorque.LeastChamferAngle(cone, 0.037, 0.09);
        return Math.Abs(Solve(cone, InDegrees(least)).BlockingRatio - 1) < 1e-9;
    });

    [Fact]
    public void Three_like_cones_make_three_times_the_torque() =>
        Assert.Equal(3 * SynchronizerTorque.ConeTorque(800, s_cone), SynchronizerTorque.Solve(new SynchronizerInput(800, [s_cone, s_cone, s_cone], 0.037, 1, 0.09)).ConeTorque, 1e-9);

    /// <summary>Sticks when tan α is at most μ. Computed here; no published synchronizer example was found.</summary>
    [Theory]
    [InlineData(0.10, 5.710593, 5e-7)]
    [InlineData(0.12, 6.842773, 5e-7)]
    [InlineData(0.08, 4.6, 0.05)]
    [InlineData(0.14, 8.0, 0.05)]
    public void Cone_sticks_at_and_below_its_friction_angle(double friction, double degrees, double half)
    {
        Assert.Equal(degrees, InDegrees(ConeRelease.StickingAngle(friction)), half);
        Assert.False(ConeRelease.LetsGo(ConeRelease.StickingAngle(friction) - 1e-9, friction));
        Assert.True(ConeRelease.LetsGo(ConeRelease.StickingAngle(friction) + 1e-9, friction));
    }

    /// <summary>Computed here, no source.</summary>
    [Theory]
    [InlineData(7, 0.14, 112)]
    [InlineData(6, 0.12, 113)]
    [InlineData(8, 0.10, 0)]
    public void Force_to_pull_a_stuck_ring_off(double degrees, double friction, double newtons) =>
        Assert.Equal(newtons, ConeRelease.PullOffForce(800, Degrees(degrees), friction), 1.0);

    /// <summary>T = μ·F·dm/(2·sin α): μ 0.1, 600 N, 80 mm, 6.5°. Computed here, no source.</summary>
    [Fact]
    public void Cone_torque_of_a_plain_cone() =>
        Assert.Equal(21.200812, SynchronizerTorque.ConeTorque(600, new Cone(0.1, 0.040, Degrees(6.5))), 5e-7);

    /// <summary>Design of Machine Elements (Bhandari), example 11.11, cone clutch, uniform wear: data and method published, answer computed here. T = μ·P·(D + d)/(4·sin α).</summary>
    [Fact]
    public void Cone_clutch_of_the_textbook_carries_its_torque() =>
        Assert.Equal(35.342917, SynchronizerTorque.ConeTorque(454.829405, new Cone(0.2, (0.177286843 + 0.159085754) / 4, Degrees(12.5))), 5e-6);

    /// <summary>The same example: 150 kg on 250 mm brought to 1440 rev/min in 40 s; heat 106.591728 kJ by the rotor's own energy.</summary>
    [Fact]
    public void Cone_clutch_of_the_textbook_turns_as_much_to_heat_as_the_rotor_takes_up()
    {
        var shift = SynchronizingHeat.Solve(new SynchronizingInput(150 * 0.25 * 0.25, PerSecond(1440), 35.342917, 0, true, 1, 0.084));
        Assert.Equal(106.591728e3, shift.Energy, 0.5);
        Assert.Equal(40, shift.Time, 1e-4);
    }

    /// <summary>Advance for 1 mm and 0.01 mm of radial wear, and the wear that eats 0.60 mm. Computed here, no source.</summary>
    [Theory]
    [InlineData(6, 9.51, 0.095, 0.063)]
    [InlineData(6.5, 8.78, 0.088, 0.068)]
    [InlineData(7, 8.14, 0.081, 0.074)]
    [InlineData(8, 7.12, 0.071, 0.084)]
    [InlineData(10, 5.67, 0.057, 0.106)]
    public void Little_wear_of_the_cone_eats_much_gap(double degrees, double perMm, double perHundredth, double budget)
    {
        Assert.Equal(perMm, ReserveGap.Advance(1, Degrees(degrees)), 0.005);
        Assert.Equal(perHundredth, ReserveGap.Advance(0.01, Degrees(degrees)), 0.0005);
        Assert.Equal(budget, ReserveGap.RadialBudget(0.60, Degrees(degrees)), 0.0005);
    }

    [Fact]
    public void Half_the_reserve_gone_leaves_as_much_life_again() => Assert.Equal(1000, ReserveGap.RemainingLife(1.2, 0.8, 0.4, 1000), 1e-9);

    [Fact]
    public void A_ring_at_its_limit_has_no_life_left() => Assert.Equal(0, ReserveGap.RemainingLife(1.2, 0.4, 0.4, 1000));

    /// <summary>Key radius 33 mm: quarter pitch, slot less key, and the share after more play. Computed here, no source.</summary>
    [Theory]
    [InlineData(36, 2.50, 2.88, 29.3, 33.7)]
    [InlineData(48, 1.875, 2.16, 30.8, 36.6)]
    [InlineData(60, 1.50, 1.73, 32.2, 39.5)]
    public void Opened_key_slots_let_the_ring_over_index(int teeth, double quarterDegrees, double slotMinusKey, double afterHalf, double afterOne)
    {
        var asNew = RingIndex.SlotMinusKeyFor(teeth, 33);
        Assert.Equal(quarterDegrees, InDegrees(RingIndex.Pitch(teeth) / 4), 0.0005);
        Assert.Equal(slotMinusKey, asNew, 0.005);
        Assert.Equal(0.25, RingIndex.ShareOfPitch(teeth, asNew, 33), 1e-12);
        Assert.Equal(afterHalf, 100 * RingIndex.ShareOfPitch(teeth, asNew + 0.5, 33), 0.05);
        Assert.Equal(afterOne, 100 * RingIndex.ShareOfPitch(teeth, asNew, 33, 1.0), 0.05);
    }

    /// <summary>J 0.012 kg·m², 1400 rev/min, 32 mm cone of 8 mm. Computed here, no source.</summary>
    [Fact]
    public void One_shift_takes_its_time_and_makes_its_heat()
    {
        var area = ConeRelease.Area(s_cone, 8e-3);
        var shift = SynchronizingHeat.Solve(new SynchronizingInput(
            0.012, PerSecond(1400), SynchronizerTorque.ConeTorque(800, s_cone), 0, true, area, 0.032));
        Assert.Equal(1620.6, area * 1e6, 0.05);
        Assert.Equal(4.05, ConeRelease.Pressure(800, s_cone, 8e-3) / 1e6, 0.005);
        Assert.Equal(129, shift.Energy, 0.5);
        Assert.Equal(0.084, shift.Time, 0.0005);
        Assert.Equal(1.54, shift.MeanPower / 1e3, 0.005);
        Assert.Equal(0.080, shift.EnergyPerArea / 1e6, 0.0005);
        Assert.Equal(1.9, shift.PeakPowerPerArea / 1e6, 0.05);
        Assert.Equal(0.95, shift.MeanPowerPerArea / 1e6, 0.005);
        Assert.Equal(4.7, shift.SlidingSpeed, 0.05);
        Assert.Equal(2.8, SynchronizingHeat.RingTemperatureRise(shift.Energy, 0.5, 0.060, 380), 0.05);
    }

    [Fact]
    public void Drag_shortens_an_upshift_and_lengthens_a_downshift()
    {
        var up = SynchronizingHeat.Solve(new SynchronizingInput(0.012, 100, 20, 2, true, 1e-3, 0.03));
        var down = SynchronizingHeat.Solve(new SynchronizingInput(0.012, 100, 20, 2, false, 1e-3, 0.03));
        Assert.True(up.Time < down.Time);
    }

    private static SynchronizerTorques Solve(Cone cone, double chamferDegrees) =>
        SynchronizerTorque.Solve(new SynchronizerInput(800, [cone], 0.037, Degrees(chamferDegrees), 0.09));
}
