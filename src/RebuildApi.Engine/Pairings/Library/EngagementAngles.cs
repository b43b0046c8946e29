using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Whether the back tapers of gear and sleeve agree: within 1 degree unless the rule says otherwise (common practice, no source).</summary>
internal static class EngagementAngles
{
    private const string Drive = "drive-flank-angle";
    private const string Coast = "coast-flank-angle";
    private static readonly string[] s_roles = ["gear", "sleeve"];

    /// <summary>How far they may differ.</summary>
    public static Real Tolerance(PairingCase parts) => new(parts.Number("angle-tolerance") ?? (Math.PI / 180), Dimension.Angle);

    /// <summary>Whether they agree on every flank that is compared, as a sight at the gear's drive flank: <c>yes</c>, <c>no</c>, or unknown.</summary>
    public static Sight Agreement(PairingCase parts)
    {
        var at = parts.AddressOf("gear", Drive);
        if (parts.Option("angles") == "by-form")
            return new Sight(at, "yes");
        var flanks = Flanks(parts).Select(f => Agreement(parts, f)).ToArray();
        return new Sight(at, flanks.Contains(Lies.Above) ? "no" : flanks.All(l => l == Lies.Inside) ? "yes" : null);
    }

    /// <summary>What to read so that the agreement is known: the angles not read yet, else all of them again.</summary>
    public static ImmutableArray<Address> Settles(PairingCase parts)
    {
        var all = Flanks(parts).SelectMany(f => s_roles.Select(r => (Role: r, Name: f))).ToArray();
        var unread = all.Where(a => parts.Read(a.Role, a.Name) is null).ToArray();
        return [.. (unread.Length > 0 ? unread : all).Select(a => parts.AddressOf(a.Role, a.Name))];
    }

    /// <summary>The drive flank's angle for the evidence, rad: as read, else 0 for a straight form, else unknown.</summary>
    public static double? Of(PairingCase parts, string role, string? form) =>
        parts.Read(role, Drive)?.Si ?? (form == "straight" ? 0 : null);

    /// <summary>Drive flanks always; coast flanks where both kinds declare their angle.</summary>
    private static string[] Flanks(PairingCase parts) =>
        s_roles.All(r => parts.Declares(r, Coast)) ? [Drive, Coast] : [Drive];

    private static Lies Agreement(PairingCase parts, string flank) =>
        parts.Read("gear", flank) is { } gear && parts.Read("sleeve", flank) is { } sleeve
            ? WindowTest.Judge((gear - sleeve).Size(), null, Tolerance(parts), parts.View.Snapshot.Policy)
            : Lies.Doubtful;
}
