using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Whether the back tapers of gear and sleeve agree: within 1 degree unless the rule says otherwise (common practice, no source).</summary>
internal static class EngagementAngles
{
    private const string Drive = "drive-flank-angle";

    /// <summary>How far they may differ.</summary>
    public static Real Tolerance(PairingCase parts) => new(parts.Number("angle-tolerance") ?? (Math.PI / 180), Dimension.Angle);

    /// <summary>Whether they agree, as a sight at the gear's angle: <c>yes</c>, <c>no</c>, or unknown.</summary>
    public static Sight Agreement(PairingCase parts)
    {
        var at = parts.AddressOf("gear", Drive);
        if (parts.Option("angles") == "by-form")
            return new Sight(at, "yes");
        if (parts.Read("gear", Drive) is not { } gear || parts.Read("sleeve", Drive) is not { } sleeve)
            return new Sight(at, null);
        var lies = WindowTest.Judge((gear - sleeve).Size(), null, Tolerance(parts), parts.View.Snapshot.Policy);
        return new Sight(at, lies switch { Lies.Inside => "yes", Lies.Above => "no", _ => null });
    }

    /// <summary>What to read so that the agreement is known: the angles not read yet, else both again.</summary>
    public static ImmutableArray<Address> Settles(PairingCase parts)
    {
        var roles = new[] { "gear", "sleeve" };
        var unread = roles.Where(r => parts.Read(r, Drive) is null).Select(r => parts.AddressOf(r, Drive)).ToImmutableArray();
        return unread.IsEmpty ? [.. roles.Select(r => parts.AddressOf(r, Drive))] : unread;
    }

    /// <summary>An angle for the evidence: as read, else 0 for a straight form, else unknown.</summary>
    public static double? Of(PairingCase parts, string role, string? form) =>
        parts.Read(role, Drive)?.Si ?? (form == "straight" ? 0 : null);
}
