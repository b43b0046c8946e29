using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Families;

/// <summary>What a family declares, by name, for a check that may meet names that are not there.</summary>
internal sealed class FamilyNames(Family family)
{
    private readonly ImmutableDictionary<string, PartKind> _kinds = family.Kinds.ToImmutableDictionary(k => k.Id, StringComparer.Ordinal);
    private readonly ImmutableDictionary<string, Position> _positions = family.Positions.ToImmutableDictionary(p => p.Id, StringComparer.Ordinal);
    private readonly ImmutableHashSet<string> _materials = family.Materials.Select(m => m.Id).ToImmutableHashSet(StringComparer.Ordinal);
    private readonly ImmutableHashSet<string> _series = family.Series.Select(s => s.Id).ToImmutableHashSet(StringComparer.Ordinal);

    public bool HasKind(string id) => _kinds.ContainsKey(id);

    public string NoKind(string id) => $"There is no kind '{id}'.";

    public bool HasMaterial(string id) => _materials.Contains(id);

    public bool HasSeries(string id) => _series.Contains(id);

    public bool HasPosition(string id) => _positions.ContainsKey(id);

    public PartKind? KindAt(string position) => _positions.TryGetValue(position, out var p) ? _kinds.GetValueOrDefault(p.Kind) : null;

    /// <summary>A characteristic seen from a kind: its own when the address names no position.</summary>
    public bool HasCharacteristic(string kind, Address at) => at.IsOfKind
        ? _kinds.TryGetValue(kind, out var k) && k.Characteristics.Any(c => c.Id == at.Characteristic)
        : Find(at) is not null;

    public Characteristic? Find(Address at) => KindAt(at.Position)?.Characteristics.FirstOrDefault(c => c.Id == at.Characteristic);

    public bool IsLengthAt(Address at) => Find(at) is { Dimension: Dimension.Length };

    /// <summary>The limits when new: the position's own before the kind's.</summary>
    public Limits? NewAt(Address at) =>
        _positions.GetValueOrDefault(at.Position)?.Overrides.FirstOrDefault(o => o.Characteristic == at.Characteristic)?.New ?? Find(at)?.New;

    public AttributeDefinition? Attribute(string position, string attribute) => KindAt(position)?.Attributes.FirstOrDefault(a => a.Id == attribute);

    public IReadOnlyCollection<string> DamageOf(string kind) =>
        _kinds.TryGetValue(kind, out var k) ? k.DamageClasses : [];

    /// <summary>The row of teeth that <c>position</c> or <c>position/tooth-set</c> names.</summary>
    public ToothSet? Teeth(string place)
    {
        var slash = place.IndexOf('/', StringComparison.Ordinal);
        var (position, set) = slash < 0 ? (place, "") : (place[..slash], place[(slash + 1)..]);
        return KindAt(position)?.ToothSets.FirstOrDefault(t => t.Id == set);
    }
}
