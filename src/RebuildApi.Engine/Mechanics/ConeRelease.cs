namespace RebuildApi.Engine.Mechanics;

/// <summary>Whether a ring lets go of its cone: it does when tan α &gt; μ (wedge with friction, any machine-design text).</summary>
public static class ConeRelease
{
    /// <summary>The half-angle, rad, at and below which the ring sticks: atan μ.</summary>
    public static double StickingAngle(double staticFriction) => Math.Atan(staticFriction);

    /// <summary>Whether it lets go by itself.</summary>
    public static bool LetsGo(double halfAngle, double staticFriction) => Math.Tan(halfAngle) > staticFriction;

    /// <summary>Force to pull the ring off, N: F·(μ/tan α − 1), 0 when it lets go by itself.</summary>
    /// <param name="force">F, with which it was pressed on, N.</param>
    /// <param name="halfAngle">α, rad; positive.</param>
    /// <param name="staticFriction">μ.</param>
    public static double PullOffForce(double force, double halfAngle, double staticFriction)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(halfAngle);
        return Math.Max(0, force * ((staticFriction / Math.Tan(halfAngle)) - 1));
    }

    /// <summary>Mean pressure on the cone, Pa: F / (sin α·A) with A = 2π·R·b / cos α.</summary>
    /// <param name="force">F, N.</param>
    /// <param name="cone">The cone.</param>
    /// <param name="width">b, width along the shaft, m.</param>
    public static double Pressure(double force, Cone cone, double width) => force / (Math.Sin(cone.HalfAngle) * Area(cone, width));

    /// <summary>Area of a cone's band, m².</summary>
    public static double Area(Cone cone, double width) => 2 * Math.PI * cone.Radius * width / Math.Cos(cone.HalfAngle);
}
