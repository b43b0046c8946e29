using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>The mechanics beside the verdict: what the flank that really touches does to the sleeve, fresh and bedded in.</summary>
internal static class EngagementEvidence
{
    /// <summary>A reason for the fresh pair, and one for the bedded-in pair where bedding in changes anything, as far as angles, torque and radius are known.</summary>
    public static IEnumerable<Reason> Of(PairingCase parts, EngagementSights sights)
    {
        var gear = EngagementAngles.Of(parts, "gear", sights.Form.Value);
        var sleeve = EngagementAngles.Of(parts, "sleeve", sights.SleeveForm.Value);
        if (sights.ToEngagement() is { Teeth: Teeth.Straight, BackTaperedSleeve: true })
            yield return parts.Because("engagement-fresh-draws-nothing", ("sleeve", parts.Places["sleeve"].Position));
        if (sleeve is not { } bedded)
            yield break;
        if (gear is { } angle && Forces(parts, EngagementFlanks.FreshAngle(angle, bedded)) is { } fresh)
            yield return Tell(parts, "engagement-forces-fresh", EngagementFlanks.FreshAngle(angle, bedded), fresh);
        var bedsIn = gear is null || bedded - EngagementFlanks.FreshAngle(gear.Value, bedded) > WorthTelling;
        if (bedsIn && bedded > 0 && Forces(parts, EngagementFlanks.BeddedAngle(bedded)) is { } worn)
            yield return Tell(parts, "engagement-forces-bedded", EngagementFlanks.BeddedAngle(bedded), worn);
    }

    // A tenth of a degree: below that the two sentences would say the same.
    private const double WorthTelling = 0.1 * Math.PI / 180;

    private static FlankForces? Forces(PairingCase parts, double angle)
    {
        if (parts.Number("torque") is not { } torque || parts.Number("engagement-radius") is not > 0)
            return null;
        var radius = parts.Number("engagement-radius")!.Value;
        var splineRadius = parts.Number("spline-radius") is { } given and > 0 ? given : radius;
        var friction = Math.Max(0, parts.Number("friction") ?? EngagementFlanks.FrictionUnderVibration);
        return Math.Abs(angle) + Math.Atan(friction) < Math.PI / 2
            ? EngagementFlanks.Solve(new FlankInput(torque, radius, splineRadius, angle, friction, friction))
            : null;
    }

    private static Reason Tell(PairingCase parts, string code, double angle, FlankForces forces) => parts.Because(
        forces.Holds ? code : code + "-out",
        ("angleDegrees", Checks.Say(Math.Round(angle * 180 / Math.PI, 1))),
        ("flankNewtons", Checks.Say(Math.Round(forces.FlankForce))),
        ("pullOutNewtons", Checks.Say(Math.Round(forces.PullOut))),
        ("expulsionNewtons", Checks.Say(Math.Round(forces.Expulsion))));
}
