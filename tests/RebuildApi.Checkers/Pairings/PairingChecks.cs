using RebuildApi.Checkers.Plans;
using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Pairings;

/// <summary>Every pairing template written down again. Of several like parts the worst decides.</summary>
public static class PairingChecks
{
    private static readonly Dictionary<string, Func<CheckedCase, IReadOnlySet<Compatibility>>> s_all = new(StringComparer.Ordinal)
    {
        ["attributes-allowed"] = Attributes.Allowed,
        ["attributes-equal"] = p => p.Option("attribute") is { Length: > 0 } name ? p.Alike(name, p.Roles) : Says.Open,
        ["ratio-set"] = p => p.Alike("ratio-set", p.Roles),
        ["vintage-match"] = p => Attributes.Matches(p, "vintage", p.List("allowed")) ? Says.Fine : p.Alike("vintage", p.Roles),
        ["bearing-envelope"] = Attributes.Envelope,
        ["bearing-thrust"] = Attributes.Thrust,
        ["lining-against-oil"] = Attributes.Oil,
        ["washer-material-facing"] = Attributes.Washer,
        ["travel-stop"] = Engagements.Stop,
        ["engagement-form"] = Engagements.Form,
        ["matched-set"] = Sets.Matched,
        ["mesh-pair"] = Meshes.Pair,
        ["thrust-direction"] = Meshes.Hands,
        ["centre-distance"] = Meshes.Centre,
        ["characteristics-difference"] = Fits.Difference,
        ["spline-match"] = Fits.Spline,
        ["snap-ring-to-groove"] = Fits.SnapRing,
        ["fork-to-groove"] = Fits.Fork,
        ["key-length-to-hub"] = Fits.Key,
        ["ring-to-cone"] = Fits.Ring,
        ["ring-slot-to-key"] = Fits.Slot,
        ["expression"] = Expressions.Judge,
    };

    /// <summary>The templates that are written down here.</summary>
    public static IEnumerable<string> Templates => s_all.Keys;

    /// <summary>What a pairing may come to; none when its template is not known here.</summary>
    public static IReadOnlySet<Compatibility>? Of(PairingRule rule, CheckedValues values) => s_all.TryGetValue(rule.Template, out var judge)
        ? Says.Worst(Cases(rule, values).Select(c => Says.Worst(c.Roles.Where(r => c.Part(r) is null).Select(_ => Says.Open).Append(judge(c)))))
        : null;

    /// <summary>Every choice of one part for each position.</summary>
    private static IEnumerable<CheckedCase> Cases(PairingRule rule, CheckedValues values)
    {
        var named = rule.Roles.ToDictionary(r => r.Key, r => r.Value.Split('/', 2), StringComparer.Ordinal);
        IEnumerable<Dictionary<string, int>> choices = [new(StringComparer.Ordinal)];
        foreach (var position in named.Values.Select(v => v[0]).Distinct(StringComparer.Ordinal))
            choices = choices.SelectMany(c => Enumerable.Range(1, values.Unit.PositionOf(position).Quantity).Select(i => new Dictionary<string, int>(c, StringComparer.Ordinal) { [position] = i }));
        return choices.Select(c => new CheckedCase(rule, values, named.ToDictionary(
            n => n.Key, n => new CheckedPlace(n.Value[0], n.Value.Length > 1 ? n.Value[1] : null, c[n.Value[0]]), StringComparer.Ordinal)));
    }
}
