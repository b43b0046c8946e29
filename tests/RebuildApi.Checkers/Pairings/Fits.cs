using RebuildApi.Checkers.Plans;
using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Pairings;

/// <summary>Pairings that are measured: one part in, on or against another.</summary>
internal static class Fits
{
    private static readonly string[] s_pads = ["fresh", "light", "worn", "burnt"];

    public static IReadOnlySet<Compatibility> Difference(CheckedCase parts)
    {
        var common = parts.Option("characteristic");
        var isNamed = common is not null || (parts.Option("first.characteristic") is not null && parts.Option("second.characteristic") is not null);
        if (!isNamed || (parts.Number("low") ?? parts.Number("high")) is null)
            return Says.Open;
        return Between(parts, ("first", Name("first")), ("second", Name("second")), "low", "high");

        string Name(string role) => parts.Option(role + ".characteristic") is null && common is not null ? common : "characteristic";
    }

    public static IReadOnlySet<Compatibility> Spline(CheckedCase parts)
    {
        string[] compared = parts.List("compare") is { Length: > 0 } given ? given : ["teeth", "form"];
        return Says.Worst([.. compared.Select(n => parts.Alike(n, "outer", "inner")), .. Window(parts, ("outer", "space-width"), ("inner", "tooth-thickness"), "play-low", "play-high")]);
    }

    public static IReadOnlySet<Compatibility> SnapRing(CheckedCase parts)
    {
        var surface = parts.Holds(parts.See("ring", "surface") switch { "as-made" => true, "ground" => false, _ => null });
        IReadOnlySet<Compatibility>[] section = parts.List("section") is { Length: > 0 } sections ? [parts.OneOf("ring", "section", sections)] : [];
        var play = parts.Has("groove") ? Window(parts, ("groove", "groove-width"), ("ring", "thickness"), "play-low", "play-high") : [];
        IReadOnlySet<Compatibility>[] facing = parts.Option("facing") is { } wanted ? [Attributes.Faces(parts, "ring", wanted)] : [];
        return Says.Worst([surface, .. section, .. play, .. facing]);
    }

    /// <summary>Burnt or worn pads do not go back; even light wear does.</summary>
    public static IReadOnlySet<Compatibility> Fork(CheckedCase parts)
    {
        string?[] pads = [parts.See("fork", "input-pad"), parts.See("fork", "output-pad")];
        var seen = pads.Any(p => p is not null && !s_pads.Contains(p)) ? Says.Open
            : parts.Holds(pads.Any(p => p is "burnt" or "worn") ? false : pads.Contains(null) ? null : true);
        return Says.Worst([seen, .. Window(parts, ("sleeve", "groove-width"), ("fork", "pad-thickness"), "clearance-low", "clearance-high")]);
    }

    public static IReadOnlySet<Compatibility> Key(CheckedCase parts)
    {
        var hasWindow = (parts.Number("length-low") ?? parts.Number("length-high")) is not null;
        IReadOnlySet<Compatibility>[] length = hasWindow ? [parts.Within(parts.Read("key", "length"), parts.Number("length-low"), parts.Number("length-high"))] : [];
        IReadOnlySet<Compatibility>[] notch = parts.List("notch") is { Length: > 0 } allowed ? [parts.OneOf("key", "notch", allowed)] : [];
        return Says.Worst([.. length, .. notch]);
    }

    public static IReadOnlySet<Compatibility> Ring(CheckedCase parts)
    {
        var grip = parts.Holds(parts.See("ring", "grip") switch { "grips" => true, "slips" => false, _ => null });
        var hasGap = (parts.Number("gap-low") ?? parts.Number("gap-high")) is not null;
        IReadOnlySet<Compatibility>[] gap = hasGap ? [parts.Within(parts.Read("ring", "reserve-gap"), parts.Number("gap-low"), parts.Number("gap-high"))] : [];
        IReadOnlySet<Compatibility>[] contact = parts.Number("contact-low") is { } share ? [parts.Within(parts.Read("gear", "contact"), share, null)] : [];
        IReadOnlySet<Compatibility>[] cone = parts.Option("cone") == "seen" ? [parts.Alike("cone", "ring", "gear")] : [];
        return Says.Worst([grip, .. gap, .. contact, .. cone]);
    }

    /// <summary>Share of a pitch that a ring indexes: ψ = (play/2)/r, pitch = 2π/z.</summary>
    public static IReadOnlySet<Compatibility> Slot(CheckedCase parts)
    {
        IReadOnlySet<Compatibility>[] slots = parts.Has("hub") ? [parts.Holds(parts.See("hub", "key-slot") switch { "sharp" => true, "opened" => false, _ => null })] : [];
        var isAngled = parts.Number("teeth") > 0 && parts.Number("key-radius") > 0;
        return Says.Worst(isAngled ? [.. slots, Angle(parts)] : slots);
    }

    private static IReadOnlySet<Compatibility> Angle(CheckedCase parts)
    {
        var (slot, key, hub) = (parts.Read("ring", "slot-width"), parts.Read("key", "width"), parts.Read("hub", "slot-width"));
        var play = Says.Less(slot, key);
        if (parts.Has("hub") && parts.Option("hub-play") == "counted")
            play = play is null || Says.Less(hub, key) is not { } more ? null : CheckedValue.Sum([(1, play), (1, more)], EstimateBasis.Derived);
        if (play is null)
            return Says.Open;
        var share = CheckedValue.Sum([(parts.Number("teeth")!.Value / (4 * Math.PI * parts.Number("key-radius")!.Value), play)], EstimateBasis.Derived);
        var (low, high, watch) = (parts.Number("share-low") ?? 0.20, parts.Number("share-high") ?? 0.33, parts.Number("share-watch") ?? 0.40);
        var policy = parts.Values.Unit.Snapshot.Policy;
        var plain = parts.Within(share, low, high);
        var isAbove = share?.Point > high && Deciding.Of(share, low, high, policy).Contains(Outcome.Nonconforming);
        return isAbove && Deciding.Of(share, null, watch, policy).Contains(Outcome.Conforming) ? Says.Just(Compatibility.Conditional) : plain;
    }

    private static IReadOnlySet<Compatibility>[] Window(CheckedCase parts, (string, string) first, (string, string) second, string low, string high) =>
        (parts.Number(low) ?? parts.Number(high)) is null ? [] : [Between(parts, first, second, low, high)];

    private static IReadOnlySet<Compatibility> Between(CheckedCase parts, (string Role, string Name) first, (string Role, string Name) second, string low, string high) =>
        parts.Within(Says.Less(parts.Read(first.Role, first.Name), parts.Read(second.Role, second.Name)), parts.Number(low), parts.Number(high));
}
