using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Plans;

/// <summary>A unit as the checker reads it: which part counts in which place, what was seen of it, which limits hold there.</summary>
/// <param name="Family">The family's declaration.</param>
/// <param name="Snapshot">The unit.</param>
public sealed record CheckedUnit(Family Family, UnitSnapshot Snapshot)
{
    /// <summary>The placement that counts: fitted before chosen, chosen before found.</summary>
    public Placement? PlacedAt(string position, int index) => Snapshot.Placements.Where(p => p.Position == position && p.Index == index).MaxBy(p => p.Role);

    /// <summary>The part that counts in a place; none when none is there.</summary>
    public Component? At(string position, int index) =>
        PlacedAt(position, index) is { } placed ? Snapshot.Components.FirstOrDefault(c => c.Id == placed.Component) : null;

    /// <summary>The places of a position that must be filled, or are.</summary>
    public IEnumerable<int> PlacesOf(Position position) =>
        Enumerable.Range(1, position.Quantity).Where(i => i <= (position.Fewest ?? position.Quantity) || At(position.Id, i) is not null);

    public Position PositionOf(string id) => Family.Positions.Single(p => p.Id == id);

    public PartKind KindOf(string position) => Family.Kinds.Single(k => k.Id == PositionOf(position).Kind);

    public Characteristic? CharacteristicAt(string position, string id) => KindOf(position).Characteristics.FirstOrDefault(c => c.Id == id);

    /// <summary>What was seen on a part as it now is.</summary>
    public IEnumerable<Finding> SeenOn(Component part) => Snapshot.Findings.Where(f => f.Component == part.Id && f.Revision == part.Revision);

    /// <summary>The newest sighting of an attribute, else what was declared; none when it is unknown.</summary>
    public string? AttributeOf(Component part, string attribute)
    {
        var newest = SeenOn(part).Where(f => f.Observation is AttributeSeen a && a.Attribute == attribute)
            .Select((f, i) => (f, i)).OrderBy(x => x.f.Taken.At).ThenBy(x => x.i).Select(x => x.f).LastOrDefault();
        return newest?.Observation is AttributeSeen seen ? seen.Value : part.Attributes.GetValueOrDefault(attribute);
    }

    /// <summary>The limits of a new part at a place.</summary>
    public Limits? DrawnAt(string position, string characteristic) =>
        OverrideAt(position, characteristic)?.New ?? CharacteristicAt(position, characteristic)?.New;

    /// <summary>The limits that decide at a place: the shop's own, else the position's, else the kind's.</summary>
    public Limits? LimitsAt(string position, string characteristic) =>
        Snapshot.Policy.Limits.FirstOrDefault(l => l.Subject == $"{position}/{characteristic}")?.Limits
        ?? OverrideAt(position, characteristic)?.Service ?? CharacteristicAt(position, characteristic)?.Service;

    /// <summary>Whether a part came in this unit in this very place.</summary>
    public bool WasFoundAt(Component part, string position, int index) =>
        Snapshot.Placements.Any(p => p.Role == PlacementRole.Found && p.Position == position && p.Index == index && p.Component == part.Id);

    private LimitOverride? OverrideAt(string position, string characteristic) => PositionOf(position).Overrides.FirstOrDefault(o => o.Characteristic == characteristic);
}
