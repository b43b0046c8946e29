using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace NameOfFamily;

/// <summary>A family to start from: one gear on a shaft, its end play set by a ring. All numbers are made up.</summary>
public sealed class NameOfFamilyPlugin : IFamilyPlugin
{
    private static readonly Source s_made = new(SourceKind.Invented, "made up to start from");

    public PluginManifest Manifest { get; } = new("ID-OF-FAMILY", "0.1.0", "nobody yet");

    public ImmutableArray<Family> Declare() => [Family()];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);

    private static Family Family() => new(
        Version,
        Text.English("family.ID-OF-FAMILY", "ID-OF-FAMILY (to be filled in)"),
        Materials: [],
        Kinds:
        [
            Kind("shaft", "Shaft", Size("seat", "Outer wall of the ring groove to the flange", 59.94m, 60.06m)),
            Kind("gear", "Gear", Size("length", "Thrust face to thrust face", 57.90m, 58.10m)),
            Kind("ring", "Selective snap ring", Size("thickness", "Thickness", 1.60m, 2.00m)),
        ],
        Positions: [Place("ring", 1), Place("gear", 2), Place("shaft", 3)],
        Loops:
        [
            new ClearanceLoop(
                "end-play", Text.English("clearance.end-play", "End play of the gear"), "shaft",
                [Part("shaft", "seat", 1), Part("gear", "length", -1), new Term(new OfSeries("ring", "ring"), -1)],
                Between(0.10m, 0.30m), null, TrialMethod.GapWithPieces, Criticality.Functional),
        ],
        Series: [new Series("ring", "ring", [Ring("170", 1.70m), Ring("180", 1.80m), Ring("190", 1.90m)], Length.Millimetres(0.01m), s_made)],
        Operations: [], Pairings: [], Sets: [], Meshes: [], Damage: [], Hooks: [], Symptoms: [], Causes: [], Cautions: [],
        // Each limit and clearance once inside and once beyond each end.
        Golden:
        [
            Case("All in the middle", 60.00m, 58.00m, 1.80m, "conforming", "shaft/seat", "gear/length", "ring/thickness", "end-play"),
            Case("The ring too thick", 60.00m, 58.00m, 1.95m, "nonconforming", "end-play"),
            Case("The ring too thin", 60.00m, 58.00m, 1.65m, "nonconforming", "end-play"),
            Case("Each part too small", 59.80m, 57.80m, 1.50m, "nonconforming", "shaft/seat", "gear/length", "ring/thickness"),
            Case("Each part too large", 60.20m, 58.20m, 2.10m, "nonconforming", "shaft/seat", "gear/length", "ring/thickness"),
        ]);

    private static FamilyVersion Version => new("ID-OF-FAMILY", "0.1.0");

    private static PartKind Kind(string id, string name, Characteristic size) => new(id, Text.English($"kind.{id}", name), [size], [], [], [], null, false);

    private static Characteristic Size(string id, string name, decimal low, decimal high) => new(
        id, Text.English(id, name), Dimension.Length, Statistic.Mean, 1, Between(low, high), Between(low, high), Distribution.None, Criticality.Ordinary, null, []);

    private static Position Place(string id, int order) => new(id, Text.English($"position.{id}", id), id, "shaft", 1, order, []);

    private static Term Part(string position, string characteristic, int sign) => new(new OfPart(new Address(position, characteristic)), sign);

    private static SeriesMember Ring(string id, decimal millimetres) => new(id, Length.Millimetres(millimetres));

    private static Limits Between(decimal low, decimal high) => Limits.Between(Length.Millimetres(low), Length.Millimetres(high), s_made);

    /// <summary>A worked case: what was read of shaft, gear and ring, and what must come out for each of the subjects.</summary>
    private static GoldenCase Case(string name, decimal seat, decimal length, decimal ring, string outcome, params string[] subjects)
    {
        (string Position, string Characteristic, decimal Millimetres)[] read = [("shaft", "seat", seat), ("gear", "length", length), ("ring", "thickness", ring)];
        var taken = new Taken("gauge", null, "author", "paper", new DateTimeOffset(2026, 1, 5, 9, 0, 0, TimeSpan.Zero), null);
        var gauge = new InstrumentState("gauge", "outside-micrometer", new Exact(Length.Micrometres(1)), new Exact(Length.Micrometres(1)), ErrorModel.Rectangular, null);
        return new GoldenCase(
            name,
            new UnitSnapshot(
                "golden", Version, [],
                [.. read.Select(r => new Component(r.Position, 1, r.Position, Origin.Unit, ImmutableSortedDictionary<string, string>.Empty, null))],
                [.. read.Select(r => new Placement(r.Position, 1, r.Position, PlacementRole.Found, Facing.Unspecified, null))],
                [.. read.Select((r, i) => new Measurement($"m{i}", r.Position, 1, r.Characteristic, [Reading.Of(Length.Millimetres(r.Millimetres), FormattableString.Invariant($"{r.Millimetres}"), "mm")], taken, null))],
                [], [], [gauge], Policy.Default),
            [.. subjects.Select(s => new Expectation(s, outcome))]);
    }
}
