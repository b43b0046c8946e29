using System.Collections.Concurrent;
using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.MonteCarlo;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Measuring;

/// <summary>
/// The value and standard uncertainty of every characteristic of a unit, worked out when first asked for and kept. Readings come before a
/// derivation, a derivation before the drawing; <see cref="Estimate.Basis"/> says which it was. Safe to share between threads.
/// </summary>
/// <param name="view">The unit.</param>
public sealed class EstimateBook(UnitView view)
{
    private readonly EstimateBook? _before;
    private readonly IReadOnlySet<string> _changed = ImmutableHashSet<string>.Empty;
    private readonly ConcurrentDictionary<(string Component, int Revision, string Characteristic), int> _counts = new();

    private static readonly Estimate Unknown = new(null, 0, null, null, null, EstimateBasis.None, []);
    private readonly ConcurrentDictionary<(string Position, int Index, string Component, string Characteristic), Estimate> _known = new();

    private readonly ConcurrentDictionary<(string Position, int Index, string Component, string Characteristic), MonteCarloResult> _trials = new();

    private EstimateBook(UnitView view, EstimateBook before, IReadOnlySet<string> changed)
        : this(view) => (_before, _changed) = (before, changed);

    /// <summary>The unit.</summary>
    public UnitView View { get; } = view;

    /// <summary>
    /// The book of a what-if in which other parts are at some positions. What was read of all other parts is taken over, not worked out again; the
    /// what-if must not change what was read of them.
    /// </summary>
    internal EstimateBook WithExchanged(UnitSnapshot after, IReadOnlySet<string> positions) => new(View.WithExchanged(after, positions), this, positions);

    /// <summary>What is known at an address.</summary>
    /// <param name="at">Position and characteristic.</param>
    /// <param name="index">Which of several like parts in the position, from 1.</param>
    /// <returns>Basis <see cref="EstimateBasis.None"/> when the place is empty or the family knows no such characteristic.</returns>
    public Estimate Of(Address at, int index = 1) => Of(at, index, []);

    /// <summary>What is known of a characteristic of a placed part.</summary>
    public Estimate Of(PlacedComponent placed, Characteristic characteristic) => Of(placed, characteristic, []);

    /// <summary>What the readings of a part alone say of a statistic, whatever the characteristic reports: the smallest, the largest, the spread.</summary>
    /// <returns>Basis <see cref="EstimateBasis.None"/> when nothing was read.</returns>
    public Estimate Read(PlacedComponent placed, Characteristic characteristic, Statistic statistic) =>
        MeasuredEstimate.Of(ReadingSet.Of(placed, characteristic, View), statistic);

    /// <summary>How many readings of a characteristic of a part at its present revision count, bounds included.</summary>
    public int ReadingsOf(PlacedComponent placed, Characteristic characteristic)
    {
        if (IsAsBefore(placed))
            return _before!.ReadingsOf(placed, characteristic);
        var key = (placed.Component.Id, placed.Component.Revision, characteristic.Id);
        return _counts.TryGetValue(key, out var known) ? known : _counts.GetOrAdd(key, SetOf(placed, characteristic).Count);
    }

    /// <summary>The readings of a part that count.</summary>
    internal ReadingSet SetOf(PlacedComponent placed, Characteristic characteristic) => ReadingSet.Of(placed, characteristic, View);

    /// <summary>The trials that a derived value was found by; none where the first order does, or it was read.</summary>
    internal MonteCarloResult? TrialsOf(PlacedComponent placed, Characteristic characteristic) =>
        Of(placed, characteristic).Basis is EstimateBasis.None ? null : _trials.GetValueOrDefault(Key(placed, characteristic));

    private Estimate Of(Address at, int index, ImmutableHashSet<string> asking)
    {
        var placed = View.At(at.Position).FirstOrDefault(p => p.Placement.Index == index);
        var characteristic = View.Family.CharacteristicAt(at);
        return placed is null || characteristic is null ? Unknown : Of(placed, characteristic, asking);
    }

    private Estimate Of(PlacedComponent placed, Characteristic characteristic, ImmutableHashSet<string> asking)
    {
        var key = Key(placed, characteristic);
        return _known.TryGetValue(key, out var known) ? known : _known.GetOrAdd(key, Compute(placed, characteristic, asking));
    }

    private static (string Position, int Index, string Component, string Characteristic) Key(PlacedComponent placed, Characteristic characteristic) =>
        (placed.Placement.Position, placed.Placement.Index, placed.Component.Id, characteristic.Id);

    private Estimate Compute(PlacedComponent placed, Characteristic characteristic, ImmutableHashSet<string> asking)
    {
        // A derivation may reach a part that was exchanged: only what rests on the part itself is taken over.
        if (IsAsBefore(placed) && characteristic.DerivedFrom is null)
            return _before!.Of(placed, characteristic, asking);
        var measured = Read(placed, characteristic, characteristic.Report);
        if (measured.Basis != EstimateBasis.None)
            return measured;
        var at = new Address(placed.Placement.Position, characteristic.Id);
        var derived = Derive(placed, characteristic, asking);
        return derived.Basis != EstimateBasis.None
            ? derived
            : DrawingEstimate.Of(View.Family.NewLimitsAt(at), characteristic.Unmeasured, new Scale(characteristic.Dimension)) ?? Unknown;
    }

    private bool IsAsBefore(PlacedComponent placed) => _before is not null && !_changed.Contains(placed.Placement.Position);

    /// <summary>A characteristic that is asked for while it is being worked out depends on itself and stays unknown.</summary>
    private Estimate Derive(PlacedComponent placed, Characteristic characteristic, ImmutableHashSet<string> asking)
    {
        var asked = $"{placed.Placement.Position}#{placed.Placement.Index}/{characteristic.Id}";
        if (characteristic.DerivedFrom is null || asking.Contains(asked))
            return Unknown;
        var deeper = asking.Add(asked);
        var scale = new Scale(characteristic.Dimension);
        var derived = characteristic.DerivedFrom switch
        {
            Linear linear => DerivedEstimate.Of(linear, scale, Input),
            Named named => DerivedEstimate.Of(named, scale, Input),
            _ => (Derived)Unknown,
        };
        if (derived.Trials is { } trials)
            _trials[Key(placed, characteristic)] = trials;
        return derived.Estimate;

        Estimate Input(Address address) => address.IsOfKind || address.Position == placed.Placement.Position
            ? OfSamePart(placed, address.Characteristic, deeper)
            : Of(address, 1, deeper);
    }

    private Estimate OfSamePart(PlacedComponent placed, string characteristic, ImmutableHashSet<string> asking) =>
        View.Family.CharacteristicOf(placed.Component.Kind, characteristic) is { } known ? Of(placed, known, asking) : Unknown;
}
