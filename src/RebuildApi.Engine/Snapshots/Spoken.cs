using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Snapshots;

/// <summary>What a person calls the things that answers speak of by their ids; what no declaration names keeps its id.</summary>
public sealed class Spoken(FamilyIndex family, string language)
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
        var (place, feature) = Split(subject);
        return feature is null ? Place(place) : $"{Place(place)}: {Feature(place, feature)}";
    }

    /// <summary>The same where a sentence goes on after it: <c>Third gear, bore, in 3 planes</c>.</summary>
    public string InSentence(string subject)
    {
        var (place, feature) = Split(subject);
        if (feature is null)
            return Subject(subject);
        return family.KindAt(place.Split('#')[0]) is null ? subject : $"{Place(place)}, {ReasonText.Inside(Feature(place, feature))}";
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

    /// <summary>The place and what is read of it; of the second of several parts <c>keys-3-4/length#2</c> is <c>length</c> of <c>keys-3-4#2</c>.</summary>
    private static (string Place, string? Feature) Split(string subject) => subject.Split('/', 2) switch
    {
        [var place, var feature] when feature.Split('#') is [var id, var index] => ($"{place}#{index}", id),
        [var place, var feature] => (place, feature),
        _ => (subject, null),
    };

    private string Place(string place)
    {
        var (position, number) = place.Split('#') is [var p, var n] ? (p, " " + n) : (place, "");
        return family.Positions.TryGetValue(position, out var known) ? Words(known.Name) + number : place;
    }
}
