using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>The steps of exchanges that may mend an engagement. A part that goes in must be known in everything the rule looks at.</summary>
internal static class EngagementCures
{
    private const string Angle = "drive-flank-angle";
    private static readonly string[] s_angles = [Angle, "coast-flank-angle"];
    private static readonly Source s_practice = new(SourceKind.CommonPractice, "two back tapers that differ by more than 1 degree bear on an edge");

    /// <summary>A usual back taper, rad, where no mate stays to be matched: 3.5 degrees (common practice 3 to 5, no source).</summary>
    public const double UsualTaper = 3.5 * Math.PI / 180;

    /// <summary>The back taper that a mate asks for, rad: as read, else the usual one.</summary>
    public static double TaperFor(PairingCase parts, string mate) =>
        parts.Read(mate, Angle)?.Si is { } read and > 0 ? read : UsualTaper;

    /// <summary>A gear with sound teeth of a form and, when back-tapered, of a taper in rad.</summary>
    public static ImmutableArray<CureStep> Gear(PairingCase parts, string form, double taper)
    {
        var steps = ImmutableArray.Create(parts.Fit("gear", "form", form), parts.Fit("gear", "drive-flank", "sound"), parts.Fit("gear", "coast-flank", "sound"));
        if (!parts.Has("stop") && DeclaresStop(parts))
            steps = steps.Add(parts.Fit("gear", "stop", form == "straight" ? "none" : "present"));
        return form == "straight" ? steps : steps.AddRange(TaperOf(parts, "gear", taper));
    }

    /// <summary>A sleeve of a form and, when back-tapered, of a taper in rad.</summary>
    public static ImmutableArray<CureStep> Sleeve(PairingCase parts, string form, double taper)
    {
        var step = parts.Fit("sleeve", "form", form);
        return form == "straight" ? [step] : [step, .. TaperOf(parts, "sleeve", taper)];
    }

    /// <summary>The part that carries the stop, with one.</summary>
    public static ImmutableArray<CureStep> Stop(PairingCase parts) =>
        parts.Has("stop") ? [parts.Fit("stop", "stop", "present")] : [];

    private static bool DeclaresStop(PairingCase parts)
    {
        var at = parts.AddressOf("gear", "stop");
        return parts.Family.KindAt(at.Position)?.Attributes.Any(a => a.Id == at.Characteristic) == true;
    }

    /// <summary>Half the tolerance on either side of a taper.</summary>
    private static IEnumerable<CureStep> TaperOf(PairingCase parts, string role, double taper)
    {
        var half = EngagementAngles.Tolerance(parts).Si / 2;
        var within = new Limits(
            new Real(taper - half, Dimension.Angle), new Real(taper + half, Dimension.Angle), new Real(taper, Dimension.Angle), s_practice);
        return parts.Option("angles") == "by-form"
            ? []
            : s_angles.Where(a => parts.Declares(role, a)).Select(a => parts.AddressOf(role, a))
                .Select(at => new CureStep(at.Position, null, null, at.Characteristic, within));
    }
}
