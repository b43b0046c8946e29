using System.Globalization;

namespace FamilyWords;

/// <summary>Words for a worked case: a few parts of a unit, what was read and seen on them, and what must come out.</summary>
internal static class GoldenWords
{
    private const string Gauge = "reference-gauge";
    private static readonly Taken s_seen = new(null, null, "author", "paper", new DateTimeOffset(2026, 1, 5, 9, 0, 0, TimeSpan.Zero), null);

    public static GoldenCase Case(string name, string family) => Case(name, new FamilyVersion(family, "1.0.0"));

    public static GoldenCase Case(string name, FamilyVersion family) => new(name, new UnitSnapshot(
        "golden", family, [], [], [], [], [], [],
        [new InstrumentState(Gauge, "outside-micrometer", new Exact(Length.Micrometres(1)), new Exact(Length.Micrometres(1)), ErrorModel.Rectangular, null)],
        Policy.Default), []);

    /// <summary>A part of a kind that came out of a place.</summary>
    public static GoldenCase FoundOf(this GoldenCase g, string position, string kind) => g.Placed(position, kind, 1, Origin.Unit, PlacementRole.Found);

    /// <summary>Parts that came out of places of the same names as their kinds.</summary>
    public static GoldenCase Found(this GoldenCase g, params string[] positions) => positions.Aggregate(g, (c, p) => c.FoundOf(p, p));

    /// <summary>A new part that is to go to a place.</summary>
    public static GoldenCase Chosen(this GoldenCase g, string position, string kind, int index = 1) => g.Placed(position, kind, index, Origin.New, PlacementRole.Chosen);

    public static GoldenCase ReadsInches(this GoldenCase g, string at, decimal value, int times = 4, int index = 1) => g.Reads(at, Inch(value), Said(value), "in", times, index);

    public static GoldenCase ReadsMillimetres(this GoldenCase g, string at, decimal value, int times = 4, int index = 1) => g.Reads(at, Millimetre(value), Said(value), "mm", times, index);

    public static GoldenCase Shows(this GoldenCase g, string position, string attribute, string value, int index = 1) => g with
    {
        Snapshot = g.Snapshot with
        {
            Findings = g.Snapshot.Findings.Add(new Finding($"f{g.Snapshot.Findings.Length + 1}", Id(position, index), 1, new AttributeSeen(attribute, value), null, s_seen, null)),
        },
    };

    /// <summary>The known piece was fitted and there was no gap at all.</summary>
    public static GoldenCase TriedTight(this GoldenCase g, string loop, string position, string series, string member, Length thickness, params string[] fitted)
    {
        var tight = new Reading(null, Length.Zero, null, "tight", "mm", null);
        var trial = new TrialAssembly(
            "t1", loop, [.. fitted.Select(p => new FittedPart(p, Id(p, 1), 1))], [new FittedPiece(position, series, member, thickness)], null,
            [tight, tight, tight], s_seen with { Instrument = Gauge }, null);
        return g with { Snapshot = g.Snapshot with { Trials = g.Snapshot.Trials.Add(trial) } };
    }

    public static GoldenCase Expect(this GoldenCase g, string subject, string outcome) => g with { Expected = g.Expected.Add(new Expectation(subject, outcome)) };

    public static GoldenCase Placed(
        this GoldenCase g, string position, string kind, int index, Origin origin, PlacementRole role, Facing facing = Facing.Unspecified, string? mark = null)
    {
        var part = new Component(Id(position, index), 1, kind, origin, ImmutableSortedDictionary<string, string>.Empty, null);
        var placement = new Placement(position, index, part.Id, role, facing, mark);
        return g with { Snapshot = g.Snapshot with { Components = g.Snapshot.Components.Add(part), Placements = g.Snapshot.Placements.Add(placement) } };
    }

    private static GoldenCase Reads(this GoldenCase g, string at, Length value, string asSent, string unit, int times, int index) =>
        g.Reads(at, index, Enumerable.Repeat(Reading.Of(value, asSent, unit), times));

    public static GoldenCase Reads(this GoldenCase g, string at, int index, IEnumerable<Reading> readings)
    {
        var address = Address.TryParse(at)!;
        var measurement = new Measurement(
            $"m{g.Snapshot.Measurements.Length + 1}", Id(address.Position, index), 1, address.Characteristic, [.. readings], s_seen with { Instrument = Gauge }, null);
        return g with { Snapshot = g.Snapshot with { Measurements = g.Snapshot.Measurements.Add(measurement) } };
    }

    private static string Id(string position, int index) => index == 1 ? position : $"{position}-{index}";

    private static string Said(decimal value) => value.ToString(CultureInfo.InvariantCulture);
}
