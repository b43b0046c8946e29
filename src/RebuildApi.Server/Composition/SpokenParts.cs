using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Composition;

/// <summary>Reads what is said of parts that are only spoken of; what does not fit their kind is complained of.</summary>
public sealed class SpokenParts(FamilyIndex family, Complaints complaints)
{
    /// <summary>A part with what is said of it.</summary>
    /// <param name="id">What it is called; not an id that a part of the shop can have.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="attributes">Attribute to value.</param>
    /// <param name="readings">What was read of it.</param>
    /// <param name="pointer">Where it stands in the request.</param>
    public Candidate Of(
        string id, string kind, IReadOnlyDictionary<string, string>? attributes, ImmutableArray<LooseReadingRequest>? readings, string pointer)
    {
        var known = attributes ?? ImmutableSortedDictionary<string, string>.Empty;
        foreach (var (attribute, value) in known)
        {
            var at = Pointer.Member(pointer + "/attributes", attribute);
            AttributeCheck.Check(family.Kinds[kind], attribute, value, at, at, complaints);
        }

        var measured = (readings ?? []).Select((r, i) => Read(id, kind, r, i, $"{pointer}/readings/{i}")).OfType<Measurement>();
        return new Candidate(new Component(id, 1, kind, Origin.Shelf, known, null), [.. measured], [], []);
    }

    /// <summary>A part of an offer; a hash sign keeps its id apart from those of real parts.</summary>
    public OfferedPart Offer(SpokenPartRequest sent, string kind, int number)
    {
        var part = Of($"sent#{number + 1}", kind, sent.Attributes, sent.Readings, Pointer.Entry("/parts", number));
        return new OfferedPart(part with { Component = part.Component with { Label = sent.Label } }, PartFrom.Sent);
    }

    private Measurement? Read(string component, string kind, LooseReadingRequest sent, int number, string pointer)
    {
        if (family.CharacteristicOf(kind, sent.Characteristic) is not { } characteristic)
        {
            complaints.AddUnknown(pointer + "/characteristic", FieldProblems.UnknownCharacteristic, $"A {kind} has no characteristic {sent.Characteristic}.",
                sent.Characteristic, [.. family.Kinds[kind].Characteristics.Select(c => c.Id)]);
            return null;
        }

        // An id with a slash is one that no stored reading can have.
        return sent.Reading.ToContract(characteristic.Dimension, pointer + "/reading", complaints) is { } reading
            ? new Measurement($"{component}/{number}", component, 1, characteristic.Id, [reading], new Taken(null, null, "", "", DateTimeOffset.UnixEpoch, null), null)
            : null;
    }
}
