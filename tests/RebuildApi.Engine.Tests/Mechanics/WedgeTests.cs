using RebuildApi.Engine.Mechanics;
using static RebuildApi.Engine.Tests.Mechanics.Angles;

namespace RebuildApi.Engine.Tests.Mechanics;

/// <summary>
/// The engagement flank is a wedge with friction, as a screw thread is: F·tan(λ + ρ) raises, F·tan(ρ − λ) lowers. So published screws check it.
/// </summary>
public sealed class WedgeTests
{
    /// <summary>
    /// Mechanical Engineering Design (Shigley), square-thread power screw: d 32 mm, p 4 mm, double thread, f = fc = 0.08, dc 40 mm, F 6.4 kN prints
    /// 26.18 N·m to raise, 9.77 N·m to lower, efficiency 0.311 (from memory of the book, recomputed).
    /// </summary>
    [Fact]
    public void Power_screw_of_the_textbook()
    {
        const double Force = 6400, Lead = 8e-3, MeanDiameter = 30e-3;
        var angle = Math.Atan(Lead / (Math.PI * MeanDiameter));
        var collar = Force * 0.08 * 20e-3;
        var raise = Thread(Force, MeanDiameter, angle, 0.08) + collar;
        var lower = Thread(Force, MeanDiameter, -angle, 0.08) + collar;

        Assert.Equal(26.18, raise, 0.005);
        Assert.Equal(9.77, lower, 0.005);
        Assert.Equal(0.311, Force * Lead / (2 * Math.PI * raise), 0.0005);
    }

    /// <summary>
    /// The same thread: its lead of 4.85° is more than the 4.57° that a friction of 0.08 holds, so the thread alone runs back: a trap for the sign.
    /// </summary>
    [Fact]
    public void That_thread_alone_does_not_hold_itself()
    {
        var angle = Math.Atan(8e-3 / (Math.PI * 30e-3));
        Assert.Equal(4.851787, InDegrees(angle), 5e-7);
        Assert.Equal(4.573921, InDegrees(EngagementFlanks.HoldingLimit(0.08, 0, 1)), 5e-7);
        Assert.Equal(-0.46557, Thread(6400, 30e-3, -angle, 0.08), 5e-6);
    }

    /// <summary>Design of Machine Elements (Bhandari), trapezoidal thread d 52, p 8, flank 15°, μ 0.15, collar 100/60 mm μ 0.12, W 2 kN: data published, answer computed here.</summary>
    [Fact]
    public void Trapezoidal_thread_of_the_textbook()
    {
        var angle = Math.Atan(8 / (Math.PI * 48));
        Assert.Equal(3.036789, InDegrees(angle), 5e-7);
        var thread = Thread(2000, 48, angle, 0.15 / Math.Cos(Degrees(15)));
        Assert.Equal(10_083.5405, thread, 5e-5);
        Assert.Equal(19_683.5405, thread + (0.12 * 2000 * 40), 5e-5);
    }

    private static double Thread(double force, double meanDiameter, double angle, double friction)
    {
        var radius = meanDiameter / 2;
        return EngagementFlanks.Solve(new FlankInput(force * radius, radius, radius, angle, friction, 0)).PullOut * radius;
    }
}
