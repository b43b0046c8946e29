using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Pairings;

/// <summary>
/// A scene written as a person would: <c>ring: grip=grips, reserve-gap=1.2 mm; gear: contact=0.8 ratio</c>. A value with a unit is a reading,
/// without one an attribute. Every position is a kind of its own.
/// </summary>
internal sealed record Stage(Family Family, SnapshotBuilder Snapshot)
{
    public static Stage Set(string scene, Func<Family, Family>? change = null)
    {
        var parts = scene.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(Part.Parse).ToArray();
        var built = parts.Aggregate(FamilyBuilder.Named(), (b, p) => b.Part(p.Position, [.. p.Readings.Select(r => r.Characteristic)])).Family;
        var family = change is null ? built : change(built);
        var snapshot = parts.Aggregate(SnapshotBuilder.Complete(family), (b, p) => p.Show(b));
        return new Stage(family, snapshot);
    }

    public PairingVerdict Judge(PairingRule rule) => rule.Judge(Family, Snapshot);

    public Stage Facing(string position, Facing facing) => this with
    {
        Snapshot = new SnapshotBuilder(Snapshot.Snapshot with
        {
            Placements = [.. Snapshot.Snapshot.Placements.Select(p => p.Position == position ? p with { Facing = facing } : p)],
        }),
    };

    /// <summary>A part chosen in place of the one that was found.</summary>
    public Stage Exchanged(string position, string? supplied = null) => this with
    {
        Snapshot = new SnapshotBuilder(Snapshot.Snapshot with
        {
            Components = Snapshot.Snapshot.Components.Add(new Component("new-" + position, 1, position, Origin.New, Supplied(supplied), null)),
            Placements = Snapshot.Snapshot.Placements.Add(new Placement(position, 1, "new-" + position, PlacementRole.Chosen, Contracts.Facing.Unspecified, null)),
        }),
    };

    private static ImmutableSortedDictionary<string, string> Supplied(string? value) => value is null
        ? ImmutableSortedDictionary<string, string>.Empty
        : ImmutableSortedDictionary<string, string>.Empty.Add("supplied", value);

    private sealed record Part(string Position, ImmutableArray<(string Name, string Value)> Sights, ImmutableArray<Reads> Readings)
    {
        public static Part Parse(string text)
        {
            var colon = text.IndexOf(':', StringComparison.Ordinal);
            var position = colon < 0 ? text : text[..colon];
            var pairs = colon < 0 ? [] : text[(colon + 1)..].Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                .Select(p => p.Split('=', 2, StringSplitOptions.TrimEntries)).ToArray();
            return new Part(
                position,
                [.. pairs.Where(p => !p[1].Contains(' ')).Select(p => (p[0], p[1]))],
                [.. pairs.Where(p => p[1].Contains(' ')).Select(p => Reads.Parse(p[0], p[1]))]);
        }

        public SnapshotBuilder Show(SnapshotBuilder builder)
        {
            var seen = Sights.Aggregate(builder, (b, s) => b.Attribute(Position, s.Name, s.Value));
            return Readings.Aggregate(seen, (b, r) => b.Reads(Position, r.Characteristic.Id, null, [r.Reading]));
        }
    }

    private sealed record Reads(Characteristic Characteristic, Reading Reading)
    {
        public static Reads Parse(string name, string value)
        {
            var words = value.Split(' ');
            if (words[1] is "mm" or "in")
            {
                var number = decimal.Parse(words[0], CultureInfo.InvariantCulture);
                var length = words[1] == "mm" ? Length.Millimetres(number) : Length.Inches(number);
                return new(FamilyBuilder.LengthOf(name, null, null), Reading.Of(length, length.InMillimetres.ToString("F6", CultureInfo.InvariantCulture), "mm"));
            }

            var si = double.Parse(words[0], CultureInfo.InvariantCulture);
            var ratio = FamilyBuilder.LengthOf(name, null, null) with { Dimension = Dimension.Ratio };
            return new(ratio, new Reading(null, null, si, si.ToString("F17", CultureInfo.InvariantCulture), "1", null));
        }
    }
}
