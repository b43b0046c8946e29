using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Pages;

/// <summary>What a person calls the things that answers speak of by their ids; what no declaration names keeps its id.</summary>
public sealed class Named(FamilyIndex family, string language)
{
    /// <summary>A text of the family.</summary>
    public string Words(Text text) => text.In(language);

    /// <summary>A position, a part of several, an address, a clearance or a pairing.</summary>
    public string Subject(string subject)
    {
        if (family.Loops.TryGetValue(subject, out var loop))
            return Words(loop.Name);
        if (family.Pairings.TryGetValue(subject, out var pairing))
            return Words(pairing.Name);
        var slash = subject.IndexOf('/', StringComparison.Ordinal);
        return slash < 0 ? Place(subject) : $"{Place(subject[..slash])}: {Feature(subject[..slash], subject[(slash + 1)..])}";
    }

    /// <summary>What is read or looked at on the part of a place.</summary>
    public string Feature(string place, string id)
    {
        var kind = family.KindAt(place.Split('#')[0]);
        var name = kind?.Characteristics.FirstOrDefault(c => c.Id == id)?.Name ?? kind?.Attributes.FirstOrDefault(a => a.Id == id)?.Name;
        return name is null ? id : Words(name);
    }

    /// <summary>What was seen of an attribute.</summary>
    public string Value(string place, string attribute, string value)
    {
        var known = family.KindAt(place.Split('#')[0])?.Attributes.FirstOrDefault(a => a.Id == attribute)?.Values.FirstOrDefault(v => v.Id == value);
        return known is null ? value : Words(known.Name);
    }

    /// <summary>A piece of work.</summary>
    public string Operation(string id) => family.Operations.TryGetValue(id, out var operation) ? Words(operation.Name) : id;

    /// <summary>A part of several by its place in the answers.</summary>
    public string Place(string position, int index) =>
        index > 1 ? string.Create(CultureInfo.InvariantCulture, $"{Place(position)} {index}") : Place(position);

    private string Place(string place)
    {
        var (position, number) = place.Split('#') is [var p, var n] ? (p, " " + n) : (place, "");
        return family.Positions.TryGetValue(position, out var known) ? Words(known.Name) + number : place;
    }
}
