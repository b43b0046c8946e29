using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.TestKit;

/// <summary>Builds snapshots for tests. Immutable: each call gives a new builder.</summary>
public sealed record SnapshotBuilder(UnitSnapshot Snapshot)
{
    public static readonly DateTimeOffset Noon = new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);

    public static SnapshotBuilder Of(Family family) => new(new UnitSnapshot("unit-1", family.Version, [], [], [], [], [], [], [], Contracts.Policy.Default));

    /// <summary>A snapshot with one found part in every position, its component named after the position.</summary>
    public static SnapshotBuilder Complete(Family family) => family.Positions.Aggregate(
        Of(family),
        (builder, position) => Enumerable.Range(1, position.Quantity).Aggregate(
            builder,
            (b, index) => b.Found(position.Id, position.Kind, index, position.Quantity == 1 ? position.Id : $"{position.Id}-{index}")));

    public SnapshotBuilder Found(string position, string kind, int index = 1, string? component = null) => new(Snapshot with
    {
        Components = Snapshot.Components.Add(new Component(component ?? position, 1, kind, Origin.Unit, ImmutableSortedDictionary<string, string>.Empty, null)),
        Placements = Snapshot.Placements.Add(new Placement(position, index, component ?? position, PlacementRole.Found, Facing.Unspecified, null)),
    });

    public SnapshotBuilder Attribute(string component, string attribute, string value) => new(Snapshot with
    {
        Components = [.. Snapshot.Components.Select(c => c.Id == component
            ? c with { Attributes = c.Attributes.ToImmutableSortedDictionary().SetItem(attribute, value) }
            : c)],
    });

    public SnapshotBuilder Micrometer(string id = "mic-1", decimal resolutionMm = 0.001m, decimal? limitOfErrorMm = 0.004m) => Instrument(new InstrumentState(
        id, "outside-micrometer", new Exact(Length.Millimetres(resolutionMm)),
        limitOfErrorMm is { } e ? new Exact(Length.Millimetres(e)) : null, ErrorModel.Rectangular, null));

    public SnapshotBuilder Instrument(InstrumentState instrument) => new(Snapshot with { Instruments = Snapshot.Instruments.Add(instrument) });

    /// <summary>Plain readings in millimetres of one characteristic of one component at its first revision.</summary>
    public SnapshotBuilder Reads(string component, string characteristic, string? instrument, params decimal[] millimetres) =>
        Reads(component, characteristic, instrument, [.. millimetres.Select(Millimetres)]);

    public SnapshotBuilder Reads(string component, string characteristic, string? instrument, ImmutableArray<Reading> readings) => new(Snapshot with
    {
        Measurements = Snapshot.Measurements.Add(new Measurement(
            $"m{Snapshot.Measurements.Length + 1}", component, 1, characteristic, readings, Taken(instrument), null)),
    });

    public SnapshotBuilder Sees(string component, Observation observation) => new(Snapshot with
    {
        Findings = Snapshot.Findings.Add(new Finding($"f{Snapshot.Findings.Length + 1}", component, 1, observation, null, Taken(null), null)),
    });

    public SnapshotBuilder Trial(string loop, ImmutableArray<FittedPiece> pieces, params Reading[] gap) => new(Snapshot with
    {
        Trials = Snapshot.Trials.Add(new TrialAssembly($"t{Snapshot.Trials.Length + 1}", loop, [], pieces, null, [.. gap], Taken(null), null)),
    });

    public SnapshotBuilder Under(Policy policy) => new(Snapshot with { Policy = policy });

    public static Taken Taken(string? instrument) => new(instrument, null, "Ada", "bench-1", Noon, null);

    public static Reading Millimetres(decimal value) => Reading.Of(Length.Millimetres(value), value.ToString(CultureInfo.InvariantCulture), "mm");

    /// <summary>"Tight": no gap at all, so the gap is at most 0.</summary>
    public static Reading Tight() => new(null, Length.Zero, null, "tight", "mm", null);
}
