using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Pairings;

/// <summary>Pairings that are seen and not measured.</summary>
internal static class Attributes
{
    private static readonly string[] s_envelope = ["envelope", "clearance-group", "ring-groove", "shield"];

    private static readonly string[] s_bearings = ["deep-groove", "filling-slot", "angular-contact", "tapered", "cylindrical", "needle"];
    private static readonly string[] s_linings = ["yellow-metal", "sprayed", "paper", "carbon", "sintered"];
    private static readonly string[] s_additives = ["none", "mild", "extreme-pressure", "friction-modified"];

    public static IReadOnlySet<Compatibility> Allowed(CheckedCase parts)
    {
        var (name, good, conditional) = (parts.Option("attribute") ?? "", parts.List("allowed"), parts.List("conditional"));
        if (Matches(parts, name, good))
            return Says.Fine;
        if (Matches(parts, name, conditional))
            return Says.Just(Compatibility.Conditional);
        var mayStill = parts.Roles.Any(r => parts.See(r, name) is null)
            && good.Concat(conditional).Any(c => Pairs(c).All(p => parts.Has(p.Role) && (parts.See(p.Role, name) ?? p.Value) == p.Value));
        return mayStill ? Says.Open : Says.Just(parts.Broken);
    }

    /// <summary>Whether the parts have one of the combinations <c>role=value+role=value</c>.</summary>
    public static bool Matches(CheckedCase parts, string name, IEnumerable<string> combinations) =>
        combinations.Any(c => Pairs(c).All(p => parts.Has(p.Role) && parts.See(p.Role, name) == p.Value));

    public static IReadOnlySet<Compatibility> Envelope(CheckedCase parts)
    {
        var asked = s_envelope.Where(n => parts.List(n).Length > 0).Select(n => parts.OneOf("bearing", n, parts.List(n)));
        return Says.Worst(parts.Has("seat") ? asked.Append(parts.Alike("envelope", "bearing", "seat")) : asked);
    }

    /// <summary>Deep-groove bearings hold both ways; angular and tapered ones need a mate for the other; filling slots, rollers and needles hold none.</summary>
    public static IReadOnlySet<Compatibility> Thrust(CheckedCase parts)
    {
        var type = parts.See("bearing", "type");
        var helical = parts.Has("gear") && parts.Values.Unit.KindOf(parts.Places["gear"].Position).ToothSets.Any(t => t.HelixAngle != 0);
        var thrust = parts.Option("thrust") ?? (helical ? "both" : "none");
        if (type is null || !s_bearings.Contains(type))
            return Says.Open;
        if (thrust == "none" || type == "deep-groove")
            return Says.Fine;
        if (type is not ("angular-contact" or "tapered"))
            return Says.Just(parts.Broken);
        if (thrust == "one")
            return Says.Fine;
        return !parts.Has("mate") ? Says.Just(parts.Broken) : parts.OneOf("mate", "type", "angular-contact", "tapered", "deep-groove");
    }

    public static IReadOnlySet<Compatibility> Oil(CheckedCase parts)
    {
        var (lining, additive) = (parts.See("ring", "lining"), parts.See("oil", "additive"));
        if ((lining is not null && !s_linings.Contains(lining)) || (additive is not null && !s_additives.Contains(additive)))
            return Says.Open;
        if (additive == "friction-modified")
            return Says.Just(parts.Broken);
        if (lining is null || additive is null)
            return Says.Open;
        if (lining is "yellow-metal" or "sprayed")
            return parts.Holds(lining == "sprayed" || additive != "extreme-pressure");
        return parts.List("named") is { Length: > 0 } named ? parts.OneOf("oil", "grade", named) : Says.Just(Compatibility.Conditional);
    }

    public static IReadOnlySet<Compatibility> Washer(CheckedCase parts)
    {
        var material = parts.See("washer", "material") is { } m && parts.List("choice").Contains(m) ? Says.Just(Compatibility.Conditional) : parts.OneOf("washer", "material", parts.List("materials"));
        return parts.Option("facing") is { } wanted ? Says.Worst([material, Faces(parts, "washer", wanted)]) : material;
    }

    /// <summary>Which way round a part sits; not recorded is not known.</summary>
    public static IReadOnlySet<Compatibility> Faces(CheckedCase parts, string role, string wanted)
    {
        var place = parts.Places[role];
        var facing = parts.Part(role) is null ? Facing.Unspecified : parts.Values.Unit.PlacedAt(place.Position, place.Index)!.Facing;
        return parts.Holds(facing == Facing.Unspecified ? null : facing == (wanted == "input" ? Facing.Input : Facing.Output));
    }

    private static IEnumerable<(string Role, string Value)> Pairs(string combination) =>
        combination.Split('+', StringSplitOptions.TrimEntries).Select(p => p.Split('=', 2, StringSplitOptions.TrimEntries)).Select(p => (p[0], p.Length == 2 ? p[1] : ""));
}
