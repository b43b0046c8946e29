namespace RebuildApi.Engine.Mechanics;

/// <summary>Engagement teeth and how many of them carry.</summary>
/// <param name="TangentialForce">Fc = T / rc, N.</param>
/// <param name="Teeth">z, engagement teeth of the gear; 36 is a common count.</param>
/// <param name="Share">Share of them that carries, above 0 up to 1; after wear a half, rocking a third (common practice, no source).</param>
/// <param name="ContactHeight">h, radial height in contact, m.</param>
/// <param name="EngagedLength">le, length engaged along the shaft, m; less when teeth are shortened or over-travel is missing.</param>
/// <param name="RootThickness">t, thickness at the root, m.</param>
public sealed record EngagementStressInput(
    double TangentialForce, double Teeth, double Share, double ContactHeight, double EngagedLength, double RootThickness);

/// <summary>Mean stresses, Pa. Compare with a family's own value that served; shock multiplies by 2 to 3 (common practice, no source).</summary>
/// <param name="Contact">p = Fc / (n·h·le), n = share·z.</param>
/// <param name="Shear">τ = Fc / (n·t·le).</param>
public sealed record EngagementStresses(double Contact, double Shear);

/// <summary>Stress of the small engagement teeth, which carry the whole torque of the gear. Derived here, no source.</summary>
public static class EngagementStress
{
    /// <summary>Mean contact and root shear stress.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A size is not positive, or the share is not above 0 and at most 1.</exception>
    public static EngagementStresses Solve(EngagementStressInput input)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.Teeth);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.Share);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(input.Share, 1);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.ContactHeight);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.EngagedLength);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.RootThickness);
        var loadedLength = input.Share * input.Teeth * input.EngagedLength;
        return new EngagementStresses(
            Math.Abs(input.TangentialForce) / (loadedLength * input.ContactHeight),
            Math.Abs(input.TangentialForce) / (loadedLength * input.RootThickness));
    }
}
