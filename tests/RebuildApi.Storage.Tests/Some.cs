using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.TestKit;

namespace RebuildApi.Storage.Tests;

/// <summary>Records whose other values do not matter to the test.</summary>
public static class Some
{
    public static Unit Unit(string id = "u1", string stage = "intake") => new(
        id, "tag " + id, new FamilyVersion("brackenmere-4", "1.0.0"), "Mrs Invented", [new SymptomSeen("jumps-out", "3")], "it jumps out", stage,
        SnapshotBuilder.Noon, "Ada", 0);

    public static Component Component(string id = "c1", int revision = 1) => new(
        id, revision, "gear", Origin.Unit, ImmutableSortedDictionary<string, string>.Empty.Add("teeth", "straight"), null);

    public static Placement Placement(string component = "c1", string position = "third-gear", PlacementRole role = PlacementRole.Found) => new(
        position, 1, component, role, Facing.Unspecified, null);

    public static Measurement Measurement(string id = "m1", string component = "c1", decimal millimetres = 30.012m, string? supersedes = null) => new(
        id, component, 1, "width",
        [Reading.Of(Length.Millimetres(millimetres), millimetres.ToString(CultureInfo.InvariantCulture), "mm")],
        SnapshotBuilder.Taken("mic-1"), supersedes);

    public static Finding Finding(string id = "f1", string component = "c1", string? supersedes = null) => new(
        id, component, 1, new DamageSeen("macropitting", "slight", "drive side"), null, SnapshotBuilder.Taken(null), supersedes);

    public static TrialAssembly Trial(string id = "t1", string? supersedes = null) => new(
        id, "third-gear-end-play", [new FittedPart("third-gear", "c1", 1)], [], null, [SnapshotBuilder.Tight()], SnapshotBuilder.Taken(null), supersedes);

    public static Decision Decision(string id = "d1", string? supersedes = null) => new(
        id, "third-gear", "reuse", "seen worse", "Ada", "bench-1", SnapshotBuilder.Noon, "inconclusive", "ab", supersedes);

    public static Instrument Instrument(string id = "mic-1") => new(
        new InstrumentState(id, "outside-micrometer", new Exact(Length.Millimetres(0.001m)), null, ErrorModel.Rectangular, null), "the old one", 0);

    /// <summary>A unit with one found part.</summary>
    public static void OpenWithPart(this IWriteSession session, string unit = "u1", string component = "c1")
    {
        session.Open(Unit(unit));
        session.Add(unit, Component(component));
        session.Place(unit, Placement(component));
    }
}
