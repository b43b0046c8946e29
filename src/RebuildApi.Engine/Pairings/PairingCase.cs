using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Pairings;

/// <summary>One rule put to one part in each of its places: roles, attributes, characteristics, parameters and options by name.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Book">What is known of the parts.</param>
/// <param name="Places">Role to place; every one names a position of the family.</param>
internal sealed record PairingCase(PairingRule Rule, EstimateBook Book, ImmutableSortedDictionary<string, Place> Places)
{
    public UnitView View => Book.View;

    public FamilyIndex Family => Book.View.Family;

    public bool Has(string role) => Places.ContainsKey(role);

    /// <summary>The part in a role, or null when none is there.</summary>
    public PlacedComponent? Part(string role) =>
        Places.TryGetValue(role, out var place) ? View.At(place.Position).FirstOrDefault(p => p.Placement.Index == place.Index) : null;

    /// <summary>What is seen of an attribute of the part in a role.</summary>
    public Sight See(string role, string name)
    {
        var at = AddressOf(role, name);
        return new Sight(at, Part(role) is { } part ? View.AttributeOf(part.Component, at.Characteristic) : null);
    }

    /// <summary>
    /// What is known of a characteristic of the part in a role; null when it is not. Too few readings are not known, and a drawing says nothing
    /// of a part that has run: it stands in only for a part that is new.
    /// </summary>
    public Known? Read(string role, string name)
    {
        var at = AddressOf(role, name);
        if (Part(role) is not { } part || Family.CharacteristicAt(at) is not { } characteristic)
            return null;
        var estimate = Book.Of(at, Places[role].Index);
        var counts = estimate.Basis switch
        {
            EstimateBasis.Measured => Book.ReadingsOf(part, characteristic) >= characteristic.MinimumReadings,
            EstimateBasis.Drawing => part.Component.Origin == Origin.New,
            EstimateBasis.None => false,
            _ => true,
        };
        return counts ? Known.From(estimate, characteristic.Dimension) : null;
    }

    /// <summary>Whether the kind in a role declares a characteristic.</summary>
    public bool Declares(string role, string name) => Has(role) && Family.CharacteristicAt(AddressOf(role, name)) is not null;

    /// <summary>Where an attribute or a characteristic of a role is found.</summary>
    public Address AddressOf(string role, string name)
    {
        var place = Places[role];
        return new Address(place.Position, Option(role + "." + name) ?? (place.Feature is null ? name : place.Feature + "." + name));
    }

    /// <summary>The running teeth that a role names: the tooth set of its feature, or the only one of its kind.</summary>
    public ToothSet? TeethOf(string role)
    {
        if (!Places.TryGetValue(role, out var place) || Family.KindAt(place.Position) is not { } kind)
            return null;
        return kind.ToothSets.FirstOrDefault(t => t.Id == (place.Feature ?? string.Empty))
            ?? (kind.ToothSets.Length == 1 ? kind.ToothSets[0] : null);
    }

    /// <summary>Whether the part in a role has running teeth that are not spur.</summary>
    public bool IsHelical(string role) =>
        Places.TryGetValue(role, out var place) && Family.KindAt(place.Position) is { } kind && kind.ToothSets.Any(t => t.HelixAngle != 0);

    public Quantity? Parameter(string name) => Rule.Parameters.GetValueOrDefault(name);

    public double? Number(string name) => Parameter(name)?.InSi;

    public string? Option(string name) => Rule.Options.GetValueOrDefault(name);

    /// <summary>A list written with <c>|</c> between its values; empty when it is not given.</summary>
    public ImmutableArray<string> List(string name) =>
        [.. (Option(name) ?? string.Empty).Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
}

/// <summary>Where a role points to.</summary>
/// <param name="Position">The position.</param>
/// <param name="Feature">The feature of its part, if one is named.</param>
/// <param name="Index">Which of several like parts.</param>
internal sealed record Place(string Position, string? Feature, int Index)
{
    /// <summary>Reads <c>position</c> or <c>position/feature</c>.</summary>
    public static Place Parse(string text, int index = 1)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        return slash < 0 ? new Place(text, null, index) : new Place(text[..slash], text[(slash + 1)..], index);
    }
}

/// <summary>What is seen of one attribute of one part.</summary>
/// <param name="At">Position and attribute.</param>
/// <param name="Value">Its value; null when it is unknown.</param>
internal sealed record Sight(Address At, string? Value);
