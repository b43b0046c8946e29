namespace RebuildApi.Families.Tests;

/// <summary>What a healthy unit of each family shows.</summary>
internal static class Healthy
{
    private static readonly ImmutableSortedDictionary<string, string> s_common = ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, new KeyValuePair<string, string>[]
    {
        new("vintage", "early"), new("ratio-set", "wide"), new("dog.drive-flank", "sound"), new("dog.coast-flank", "sound"),
        new("dog.teeth", "n36"), new("teeth", "n36"), new("grip", "grips"), new("lining", "yellow-metal"), new("key-slot", "sharp"), new("notch", "one"),
        new("input-pad", "light"), new("output-pad", "light"), new("type", "deep-groove"), new("feel", "smooth"), new("clearance-group", "cn"),
        new("material", "bronze"), new("surface", "as-made"), new("supply", "selected"), new("additive", "mild"), new("grade", "marsh-75"), new("supplied", "as-set"),
        new("hand", "left"), new("input.hand", "right"), new("third.hand", "right"),
    });

    public static Bench Brackenmere { get; } = SoundUnit
        .Of(Rules("brackenmere-4"), s_common.AddRange([new("dog.form", "straight"), new("form", "straight"), new("dog.stop", "none")]))
        .Shows("keys-1-2", "notch", "none");

    public static Bench Ostrand { get; } = SoundUnit.Of(
        Rules("ostrand-5"),
        s_common.SetItems([new("dog.form", "back-tapered"), new("form", "back-tapered"), new("dog.stop", "present"), new("lining", "carbon"), new("type", "tapered")]));

    public static Bench Kestermere { get; } = SoundUnit.Of(
        Rules("kestermere-6"),
        s_common.SetItems([new("dog.form", "back-tapered"), new("form", "back-tapered"), new("dog.stop", "present"), new("lining", "carbon")]));

    public static Bench Of(string family) => new[] { Brackenmere, Ostrand, Kestermere }.Single(b => b.Family.Version.Id == family);

    /// <summary>A family without its worked cases: they say nothing of a unit, and thousands of changed families are hashed in these tests.</summary>
    private static Family Rules(string id) => Shipped.Of(id) with { Golden = [] };
}
