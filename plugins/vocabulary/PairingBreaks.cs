namespace FamilyWords;

/// <summary>The one change to healthy parts that breaks a pairing, template by template.</summary>
internal sealed class PairingBreaks(Family family, PairingRule rule, Func<PairingRule, string, string> sound)
{
    private static readonly Length s_far = Length.Millimetres(1);
    private readonly RulePlaces _places = new(family, rule);

    private string Declared => rule.WhenBroken == Compatibility.Conditional ? "conditional" : "incompatible";

    /// <summary>The broken case and what must come out.</summary>
    public (CaseDraft Case, string Outcome) Of(CaseDraft healthy) => rule.Template switch
    {
        // Teeth whose metal is gone hold nothing, whatever the sleeve.
        "engagement-form" => (healthy.Shows(At("gear", "drive-flank"), "spent"), "incompatible"),
        "spline-match" => (Otherwise(healthy, At("inner", "teeth")), Declared),
        "travel-stop" => (healthy.Shows(At("sleeve", "form"), "back-tapered").Shows(At("stop", "stop"), "none"), Declared),
        "matched-set" => (healthy.Exchanges(_places.Positions[^1]), Declared),
        "mesh-pair" => (healthy.Exchanges(rule.Roles["driven"].Split('/')[0]), Declared),
        "ring-to-cone" => (healthy.Shows(At("ring", "grip"), "slips"), Declared),
        "ring-slot-to-key" => (healthy.Shows(At("hub", "key-slot"), "opened"), Declared),
        "lining-against-oil" => (healthy.Shows(At("oil", "additive"), "friction-modified"), Declared),
        "attributes-equal" => (Otherwise(healthy, At("second", rule.Options["attribute"])), Declared),
        "attributes-allowed" => NotAllowed(healthy, At("first", rule.Options["attribute"])),
        "fork-to-groove" => (healthy.Shows(At("fork", "input-pad"), "burnt"), Declared),
        "centre-distance" => (Further(healthy, At("case", rule.Options["case.centre-distance"])), Declared),
        "snap-ring-to-groove" => (healthy.Shows(At("ring", "surface"), "ground"), Declared),
        "washer-material-facing" => Washer(healthy),
        "thrust-direction" => (Turned(healthy), Declared),
        "ratio-set" => (Otherwise(healthy, At("second", "ratio-set")), Declared),
        "vintage-match" => (Otherwise(healthy, At("second", "vintage")), Declared),
        "bearing-thrust" => (healthy.Shows(At("bearing", "type"), _places.Other(At("bearing", "type"), "deep-groove", "tapered", "angular-contact")), Declared),
        "bearing-envelope" => (healthy.Shows(At("bearing", "clearance-group"), _places.Other(At("bearing", "clearance-group"), rule.Options["clearance-group"].Split('|'))), Declared),
        "key-length-to-hub" => (healthy.Reads(At("key", "length"), Beyond(rule.Parameters["length-high"])), Declared),
        "characteristics-difference" => (Further(healthy, At("first", rule.Options["first.characteristic"])), Declared),
        _ => throw new InvalidOperationException($"No change is known that breaks a pairing by {rule.Template}."),
    };

    private string At(string role, string name) => _places.At(role, name);

    private CaseDraft Otherwise(CaseDraft healthy, string at) => healthy.Shows(at, _places.Other(at, sound(rule, at)));

    /// <summary>A value that no combination names; where there is none, one that may run on a condition.</summary>
    private (CaseDraft Case, string Outcome) NotAllowed(CaseDraft healthy, string at)
    {
        var other = _places.Other(at, sound(rule, at));
        return (healthy.Shows(at, other), rule.Options.GetValueOrDefault("conditional", "").Split('|').Contains($"first={other}") ? "conditional" : Declared);
    }

    /// <summary>The grooved face away from its gear; where the facing is not judged, a material that is a choice to be recorded.</summary>
    private (CaseDraft Case, string Outcome) Washer(CaseDraft healthy) => rule.Options.TryGetValue("facing", out var facing)
        ? (healthy.Faces(_places.Positions[0], facing == "output" ? Facing.Input : Facing.Output), Declared)
        : (healthy.Shows(At("washer", "material"), rule.Options["choice"]), "conditional");

    private CaseDraft Turned(CaseDraft healthy)
    {
        var at = At("second", "hand");
        return healthy.Shows(at, sound(rule, at) == "left" ? "right" : "left");
    }

    private CaseDraft Further(CaseDraft healthy, string at) => healthy.Reads(at, Beyond(healthy.ValueAt(at)));

    private static Exact Beyond(Quantity value) => new(((Exact)value).Value + s_far);
}
