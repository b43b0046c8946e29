using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Engagement teeth of a gear against those of its sleeve.</summary>
internal sealed class EngagementForm : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "engagement-form",
        "Engagement teeth to sleeve",
        """
        Judges the small engagement teeth of a gear, which carry its whole torque, against the teeth of the sleeve that slides over them: straight
        or back-tapered, sound, leaned over or spent, with or without a stop for the sleeve's travel. The drive and the coast flank are seen
        separately; wear on one with the other dark and untouched means that the teeth have leaned. The table decides, not the rule's own
        when-broken. The forces of the flank that really touches are given beside it when the torque and the radius are known.
        """,
        [
            Role("gear", "the gear, as position/feature of its engagement teeth: third-gear/dog"),
            Role("sleeve", "the sliding sleeve"),
            MaybeRole("stop", "the part that carries the travel stop; the gear's teeth when it is not filled"),
        ],
        [
            Sees("gear", "form", "form of the engagement teeth", [.. EngagementSights.Forms]),
            Sees("gear", "drive-flank", "their flanks that carry the drive", [.. EngagementSights.Flanks]),
            Sees("gear", "coast-flank", "their flanks that carry the overrun", [.. EngagementSights.Flanks]),
            MaySee("gear", "stop", "raised stop on the teeth; read when the role stop is not filled", [.. EngagementSights.Stops]),
            Sees("sleeve", "form", "form of the sleeve's teeth", [.. EngagementSights.Forms]),
            Sees("stop", "stop", "the travel stop", [.. EngagementSights.Stops]),
        ],
        [
            MayRead("gear", "drive-flank-angle", Dimension.Angle, "flank to the shaft axis, positive when back-tapered; needed unless the option angles is by-form"),
            MayRead("sleeve", "drive-flank-angle", Dimension.Angle, "the same of the sleeve"),
            MayRead("gear", "coast-flank-angle", Dimension.Angle, "compared too where gear and sleeve both declare it"),
            MayRead("sleeve", "coast-flank-angle", Dimension.Angle, "the same of the sleeve"),
        ],
        [
            Number("angle-tolerance", Dimension.Angle, "how far two back tapers may differ; 1 degree when not given (common practice, no source)"),
            Number("torque", Dimension.Torque, "torque through the sleeve; no forces are told without it"),
            Number("engagement-radius", Dimension.Length, "mean radius of the engagement teeth; no forces are told without it"),
            Number("spline-radius", Dimension.Length, "mean radius of the hub's splines; as the engagement radius when not given"),
            Number("friction", Dimension.Ratio, "friction left under vibration; 0.05 when not given (common practice, 0.02 to 0.05)"),
        ],
        [
            Word("angles", "compare: the angles are read and must agree; by-form: the form alone settles it; compare when not given", "compare", "by-form"),
            Word("leaned-without-stop", "conditional: this family lets leaned teeth run with a back-tapered sleeve that has no stop", "conditional"),
        ]);

    public override Assessment Judge(PairingCase parts)
    {
        var sights = See(parts);
        if (sights.FirstStrange is { } strange)
            return parts.Strange(strange);
        var completions = sights.Completions().ToArray();
        var outcomes = Array.ConvertAll(completions, s => CellOf(parts, s).Outcome);
        if (Array.Exists(outcomes, o => o != outcomes[0]))
            return Assessment.Worst(sights.Deciding(outcomes).SelectMany(s => Ask(parts, sights, s)));
        var (outcome, code) = CellOf(parts, completions[0]);
        return new Assessment(outcome, [parts.Because(code, Told(parts)), .. Beside(parts, completions[0])], []);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        foreach (var form in EngagementSights.Forms)
        {
            var gear = EngagementCures.Gear(parts, form, EngagementCures.TaperFor(parts, "sleeve"));
            var sleeve = EngagementCures.Sleeve(parts, form, EngagementCures.TaperFor(parts, "gear"));
            var both = EngagementCures.Gear(parts, form, EngagementCures.UsualTaper).AddRange(EngagementCures.Sleeve(parts, form, EngagementCures.UsualTaper));
            yield return new Exchange($"fit-{form}-sleeve", $"Fit a {form} sleeve, sound, in place of this one.", sleeve);
            yield return new Exchange($"fit-{form}-gear", $"Fit a gear with sound {form} engagement teeth.", gear);
            yield return new Exchange($"fit-{form}-gear-and-sleeve", $"Fit a gear with sound {form} engagement teeth and a {form} sleeve.", both);
            if (parts.Has("stop"))
            {
                yield return new Exchange(
                    $"fit-{form}-gear-sleeve-and-stop",
                    $"Fit a sound {form} gear and sleeve, and a travel stop.",
                    both.AddRange(EngagementCures.Stop(parts)));
            }
        }
    }

    private static EngagementSights See(PairingCase parts) => new(
        parts.See("gear", "form"),
        parts.See("gear", "drive-flank"),
        parts.See("gear", "coast-flank"),
        parts.See("sleeve", "form"),
        parts.See(parts.Has("stop") ? "stop" : "gear", "stop"),
        EngagementAngles.Agreement(parts));

    private static (Compatibility Outcome, string Code) CellOf(PairingCase parts, EngagementSights sights) =>
        EngagementTable.Cell(sights.ToEngagement(), parts.Option("leaned-without-stop") == "conditional");

    private static IEnumerable<Assessment> Ask(PairingCase parts, EngagementSights sights, Sight wanted) => wanted == sights.AnglesAgree
        ? EngagementAngles.Settles(parts).Select(parts.Unread)
        : [parts.Unknown(wanted.At)];

    private static (string, string)[] Told(PairingCase parts) =>
        [("gear", parts.Places["gear"].Position), ("sleeve", parts.Places["sleeve"].Position)];

    private static IEnumerable<Reason> Beside(PairingCase parts, EngagementSights sights)
    {
        if (sights.LeanedOnDriveOnly)
            yield return parts.Because("engagement-leaned-on-drive-only", ("gear", parts.Places["gear"].Position));
        if (sights.ToEngagement() is { Teeth: Teeth.Straight, BackTaperedSleeve: false } && parts.IsHelical("gear"))
            yield return parts.Because("engagement-helical-watch-hold", ("gear", parts.Places["gear"].Position));
        foreach (var reason in EngagementEvidence.Of(parts, sights))
            yield return reason;
    }
}
