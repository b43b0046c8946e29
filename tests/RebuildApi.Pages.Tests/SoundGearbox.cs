using System.Globalization;
using System.Text.Json.Nodes;

namespace RebuildApi.Pages.Tests;

/// <summary>
/// What a person finds on a brackenmere-4 in which everything is sound, read off the family itself: each characteristic in the middle of its drawing
/// limits, each attribute as a healthy gearbox shows it. Invented, like the family.
/// </summary>
internal sealed class SoundGearbox(JsonObject family)
{
    private static readonly Dictionary<string, string> Shown = new(StringComparer.Ordinal)
    {
        ["vintage"] = "early",
        ["ratio-set"] = "wide",
        ["dog.drive-flank"] = "sound",
        ["dog.coast-flank"] = "sound",
        ["dog.teeth"] = "n36",
        ["teeth"] = "n36",
        ["grip"] = "grips",
        ["lining"] = "yellow-metal",
        ["key-slot"] = "sharp",
        ["notch"] = "one",
        ["input-pad"] = "light",
        ["output-pad"] = "light",
        ["type"] = "deep-groove",
        ["feel"] = "smooth",
        ["clearance-group"] = "cn",
        ["material"] = "bronze",
        ["surface"] = "as-made",
        ["supply"] = "selected",
        ["additive"] = "mild",
        ["grade"] = "marsh-75",
        ["supplied"] = "as-set",
        ["hand"] = "left",
        ["input.hand"] = "right",
        ["third.hand"] = "right",
        ["dog.form"] = "straight",
        ["form"] = "straight",
        ["dog.stop"] = "none",
        ["keys-1-2/notch"] = "none",
    };

    /// <summary>The words on the choice that is true of an attribute.</summary>
    public string Choice(string place, string attribute)
    {
        var position = place.Split('#')[0];
        var value = Shown.GetValueOrDefault($"{position}/{attribute}") ?? Shown[attribute];
        return (string)KindAt(position)["attributes"]!.AsArray().Single(a => (string)a!["id"]! == attribute)!["values"]!.AsArray().Single(v => (string)v!["id"]! == value)!["name"]!;
    }

    /// <summary>What the instrument shows, reading by reading, in millimetres for lengths; where the spread of them counts, it climbs.</summary>
    public string Reading(string place, string characteristic, int number)
    {
        var position = place.Split('#')[0];
        var c = KindAt(position)["characteristics"]!.AsArray().Single(x => (string)x!["id"]! == characteristic)!;
        var here = Position(position)["overrides"]!.AsArray().SingleOrDefault(o => (string)o!["characteristic"]! == characteristic);
        var limits = here?["new"] ?? c["new"] ?? here?["service"] ?? c["service"]!;
        var middle = Middle(Value(limits["low"]), Value(limits["high"]));
        return (string)c["report"]! == "spread" ? Text(number % 4 * middle / 8) : Text(middle);
    }

    /// <summary>The gap that is felt, in the middle of its window.</summary>
    public string Gap(string clearance)
    {
        var window = family["clearances"]!.AsArray().Single(c => (string)c!["id"]! == clearance)!["window"]!;
        return Text(Middle(Value(window["low"]), Value(window["high"])));
    }

    private JsonNode Position(string id) => family["positions"]!.AsArray().Single(p => (string)p!["id"]! == id)!;

    private JsonNode KindAt(string position) => family["kinds"]!.AsArray().Single(k => (string)k!["id"]! == (string)Position(position)["kind"]!)!;

    private static decimal? Value(JsonNode? quantity) => quantity is null ? null : decimal.Parse(quantity["value"]!.ToJsonString(), NumberStyles.Float, CultureInfo.InvariantCulture);

    private static decimal Middle(decimal? low, decimal? high) => (low, high) switch
    {
        ({ } l, { } h) => (l + h) / 2,
        ({ } l, null) => l * 1.1m,
        (null, { } h) => h / 2,
        _ => throw new InvalidOperationException("Nothing limits it."),
    };

    private static string Text(decimal value) => value.ToString("0.0000", CultureInfo.InvariantCulture);
}
