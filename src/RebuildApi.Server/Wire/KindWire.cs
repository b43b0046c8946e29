using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Server.Wire;

/// <summary>A place in the build that a component fills.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Kind">The kind of part that belongs there.</param>
/// <param name="Group">The assembly it belongs to.</param>
/// <param name="Quantity">How many like parts fill it.</param>
/// <param name="StripOrder">Where it comes in taking the gearbox apart.</param>
/// <param name="Overrides">Limits that differ here from the kind's own.</param>
public sealed record PositionWire(
    string Id, string Name, string Kind, string Group, int Quantity, int StripOrder, ImmutableArray<LimitOverrideWire> Overrides)
{
    /// <summary>From the contract.</summary>
    public static PositionWire From(Position position, Display show) => new(
        position.Id, show.Words(position.Name), position.Kind, position.Group, position.Quantity, position.StripOrder,
        [.. position.Overrides.Select(o => new LimitOverrideWire(o.Characteristic, LimitsWire.From(o.New, show), LimitsWire.From(o.Service, show)))]);
}

/// <summary>Limits of one characteristic that differ at one position.</summary>
/// <param name="Characteristic">Which.</param>
/// <param name="New">Limits when new.</param>
/// <param name="Service">Limits to go back into service.</param>
public sealed record LimitOverrideWire(string Characteristic, LimitsWire? New, LimitsWire? Service);

/// <summary>A sort of part.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Characteristics">What can be measured on it.</param>
/// <param name="Attributes">What can be seen on it.</param>
/// <param name="DamageClasses">The damage to look for.</param>
/// <param name="SingleUse">Whether it is always replaced by a new one.</param>
public sealed record KindWire(
    string Id,
    string Name,
    ImmutableArray<CharacteristicWire> Characteristics,
    ImmutableArray<AttributeWire> Attributes,
    ImmutableArray<string> DamageClasses,
    bool SingleUse)
{
    /// <summary>From the contract.</summary>
    public static KindWire From(PartKind kind, Display show) => new(
        kind.Id,
        show.Words(kind.Name),
        [.. kind.Characteristics.Select(c => CharacteristicWire.From(c, show))],
        [.. kind.Attributes.Select(a => new AttributeWire(a.Id, show.Words(a.Name), [.. a.Values.Select(v => new NamedWire(v.Id, show.Words(v.Name)))]))],
        kind.DamageClasses,
        kind.SingleUse);
}

/// <summary>A measurable feature.</summary>
/// <param name="Id">Unique within its kind.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Dimension">What it is a quantity of.</param>
/// <param name="Report">Which statistic of the readings is judged.</param>
/// <param name="MinimumReadings">How many readings make a measurement.</param>
/// <param name="New">Limits of a new part.</param>
/// <param name="Service">Limits to go back into service.</param>
/// <param name="Criticality">What hangs on it.</param>
/// <param name="Derived">Whether it follows from others rather than being read.</param>
/// <param name="Methods">How it may be measured.</param>
public sealed record CharacteristicWire(
    string Id,
    string Name,
    Dimension Dimension,
    Statistic Report,
    int MinimumReadings,
    LimitsWire? New,
    LimitsWire? Service,
    Criticality Criticality,
    bool Derived,
    ImmutableArray<string> Methods)
{
    /// <summary>From the contract.</summary>
    public static CharacteristicWire From(Characteristic c, Display show) => new(
        c.Id, show.Words(c.Name), c.Dimension, c.Report, c.MinimumReadings, LimitsWire.From(c.New, show), LimitsWire.From(c.Service, show),
        c.Criticality, c.DerivedFrom is not null, c.Methods);
}

/// <summary>Something that can be seen, from a closed list.</summary>
/// <param name="Id">Unique within its kind.</param>
/// <param name="Name">The question to answer.</param>
/// <param name="Values">The values allowed.</param>
public sealed record AttributeWire(string Id, string Name, ImmutableArray<NamedWire> Values);

/// <summary>An id with its name.</summary>
/// <param name="Id">The id.</param>
/// <param name="Name">What a person calls it.</param>
public sealed record NamedWire(string Id, string Name);
