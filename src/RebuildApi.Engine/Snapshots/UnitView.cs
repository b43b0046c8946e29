using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Identity;

namespace RebuildApi.Engine.Snapshots;

/// <summary>
/// One snapshot of a unit looked at through its family: which part counts in which place, what was read and seen on it. Immutable.
/// A fitted part counts before a chosen one, a chosen one before the one found.
/// </summary>
public sealed class UnitView
{
    private readonly Dictionary<string, Component> _components;
    private readonly ILookup<string, PlacedComponent> _placed;
    private readonly ILookup<(string Component, int Revision, string Characteristic), Measurement> _measurements;
    private readonly ILookup<(string Component, int Revision), Finding> _findings;
    private readonly ILookup<string, TrialAssembly> _trials;
    private readonly Dictionary<string, InstrumentState> _instruments;
    private readonly UnitView? _before;
    private readonly IReadOnlySet<string> _exchanged = ImmutableHashSet<string>.Empty;
    private string? _inputsSha256;

    /// <summary>Looks at a snapshot. What it says about things the family does not know is passed over.</summary>
    public UnitView(UnitSnapshot snapshot, FamilyIndex family)
    {
        Snapshot = snapshot;
        Family = family;
        _components = snapshot.Components.ToDictionary(c => c.Id, StringComparer.Ordinal);
        _instruments = snapshot.Instruments.ToDictionary(i => i.Id, StringComparer.Ordinal);
        _measurements = snapshot.Measurements.ToLookup(m => (m.Component, m.Revision, m.Characteristic));
        _findings = snapshot.Findings.ToLookup(f => (f.Component, f.Revision));
        _trials = snapshot.Trials.ToLookup(t => t.Loop, StringComparer.Ordinal);
        _placed = Placed(snapshot.Placements);
    }

    /// <summary>
    /// Looks at a what-if in which other parts are at some positions, and all else is as it was. Only those positions are indexed again. Its answers
    /// carry the hash of the unit as it is: only outcomes are asked of it.
    /// </summary>
    private UnitView(UnitView before, UnitSnapshot after, IReadOnlySet<string> exchanged)
    {
        (Snapshot, Family, _before, _exchanged, _inputsSha256) = (after, before.Family, before, exchanged, before.InputsSha256);
        var places = after.Placements.Where(p => exchanged.Contains(p.Position)).ToArray();
        var there = places.Select(p => p.Component).ToHashSet(StringComparer.Ordinal);
        _components = after.Components.Where(c => there.Contains(c.Id)).ToDictionary(c => c.Id, StringComparer.Ordinal);
        _instruments = before._instruments;
        _trials = before._trials;
        _measurements = after.Measurements.Where(m => there.Contains(m.Component)).ToLookup(m => (m.Component, m.Revision, m.Characteristic));
        _findings = after.Findings.Where(f => there.Contains(f.Component)).ToLookup(f => (f.Component, f.Revision));
        _placed = Placed(places);
    }

    /// <summary>Looks at a what-if of which only outcomes are asked: its answers carry the given hash, and none is worked out.</summary>
    internal UnitView(UnitSnapshot snapshot, FamilyIndex family, string inputsSha256)
        : this(snapshot, family) => _inputsSha256 = inputsSha256;

    /// <summary>What is looked at.</summary>
    public UnitSnapshot Snapshot { get; }

    /// <summary>What it is looked at through.</summary>
    public FamilyIndex Family { get; }

    /// <summary>Canonical hash of the snapshot, made when first asked for: what-ifs that only want an outcome never pay for it.</summary>
    public string InputsSha256 => _inputsSha256 ??= Canonical.Sha256(Snapshot);

    /// <summary>The parts that count in a position, by index; empty when none is there.</summary>
    public IEnumerable<PlacedComponent> At(string position) =>
        _before is not null && !_exchanged.Contains(position) ? _before.At(position) : _placed[position];

    /// <summary>The part that counts in a position of one, or the first of several; null when none is there.</summary>
    public PlacedComponent? FirstAt(string position) => At(position).FirstOrDefault();

    /// <summary>What was read of one characteristic of a part at its present revision.</summary>
    public IEnumerable<Measurement> MeasurementsOf(Component component, string characteristic) =>
        IsAsBefore(component) ? _before!.MeasurementsOf(component, characteristic) : _measurements[(component.Id, component.Revision, characteristic)];

    /// <summary>What was seen on a part at its present revision.</summary>
    public IEnumerable<Finding> FindingsOf(Component component) =>
        IsAsBefore(component) ? _before!.FindingsOf(component) : _findings[(component.Id, component.Revision)];

    /// <summary>What was read of a clearance directly.</summary>
    public IEnumerable<TrialAssembly> TrialsOf(string loop) => _trials[loop];

    /// <summary>An instrument, or null when the snapshot does not know it.</summary>
    public InstrumentState? Instrument(string? id) => id is null ? null : _instruments.GetValueOrDefault(id);

    /// <summary>
    /// The value of an attribute of a part: the newest finding (of two at the same moment, the one recorded last), else what was declared; null
    /// when it is unknown. Unknown is never good.
    /// </summary>
    public string? AttributeOf(Component component, string attribute)
    {
        var seen = FindingsOf(component)
            .Where(f => f.Observation is AttributeSeen a && a.Attribute == attribute)
            .OrderBy(f => f.Taken.At)
            .LastOrDefault();
        return seen is { Observation: AttributeSeen found } ? found.Value : component.Attributes.GetValueOrDefault(attribute);
    }

    /// <summary>
    /// The value of an attribute at a position. Where several like parts fill it, their common value; null when any is unknown or they differ.
    /// </summary>
    public string? AttributeAt(string position, string attribute)
    {
        var values = At(position).Select(p => AttributeOf(p.Component, attribute)).Distinct().Take(2).ToArray();
        return values.Length == 1 ? values[0] : null;
    }

    /// <summary>
    /// The what-if in which other parts are at some positions; no instrument, trial, reading or sighting of any other part may differ. Every position
    /// of a part that is other than it was must be named.
    /// </summary>
    internal UnitView WithExchanged(UnitSnapshot after, IReadOnlySet<string> positions) => new(this, after, positions);

    private bool IsAsBefore(Component component) => _before is not null && !_components.ContainsKey(component.Id);

    private ILookup<string, PlacedComponent> Placed(IEnumerable<Placement> placements) => placements
        .GroupBy(p => (p.Position, p.Index))
        .Select(g => g.MaxBy(p => p.Role)!)
        .Where(p => Family.Positions.ContainsKey(p.Position) && _components.ContainsKey(p.Component))
        .OrderBy(p => p.Index)
        .ToLookup(p => p.Position, p => new PlacedComponent(p, _components[p.Component]), StringComparer.Ordinal);
}

/// <summary>A part where it sits.</summary>
/// <param name="Placement">Where and how.</param>
/// <param name="Component">The part.</param>
public sealed record PlacedComponent(Placement Placement, Component Component);
