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
        var fresh = gear is { } angle ? EngagementFlanks.FreshAngle(angle, bedded) : (double?)null;
        if (fresh is { } touched && Forces(parts, touched) is { } now)
            yield return Tell(parts, "engagement-fresh", touched, now);
        var bedsIn = bedded > WorthTelling && !(bedded - fresh <= WorthTelling);
        if (bedsIn && Forces(parts, EngagementFlanks.BeddedAngle(bedded)) is { } later)
            yield return Tell(parts, "engagement-bedded", bedded, later);
    }

    // A tenth of a degree: below that the two sentences would say the same, and a flank counts as straight.
    private const double WorthTelling = 0.1 * Math.PI / 180;

    private static double Friction(PairingCase parts) => Math.Max(0, parts.Number("friction") ?? EngagementFlanks.FrictionUnderVibration);

    private static FlankForces? Forces(PairingCase parts, double angle)
    {
        if (parts.Number("torque") is not { } torque || parts.Number("engagement-radius") is not { } radius || radius <= 0)
            return null;
        var splineRadius = parts.Number("spline-radius") is { } given and > 0 ? given : radius;
        var friction = Friction(parts);
        return Math.Abs(angle) + Math.Atan(friction) < Math.PI / 2
            ? EngagementFlanks.Solve(new FlankInput(torque, radius, splineRadius, angle, friction, friction))
            : null;
    }

    private static Reason Tell(PairingCase parts, string when, double angle, FlankForces forces)
    {
        var way = angle switch
        {
            > WorthTelling => "-in",
            >= -WorthTelling => "-straight",
            _ => forces.Holds ? "-out-held" : "-out",
        };
        return parts.Because(
            when + way,
            ("angleDegrees", Checks.Say(Math.Round(Math.Abs(angle) * 180 / Math.PI, 1))),
            ("torqueNewtonMetres", Checks.Say(Math.Round(Math.Abs(parts.Number("torque") ?? 0)))),
            ("friction", Checks.Say(Friction(parts))),
            ("flankNewtons", Checks.Say(Math.Round(Math.Abs(forces.FlankForce)))),
            ("pullOutNewtons", Checks.Say(Math.Round(forces.PullOut))),
            ("expulsionNewtons", Checks.Say(Math.Round(forces.Expulsion))));
    }
}
