using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Quantities;
using RebuildApi.Engine.Statistics;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Calculations;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>Works a gauge study out by analysis of variance, keeps it with its readings, and lets the instrument carry what it found.</summary>
public sealed class StudyDesk(FamilyBook families, IIdSource ids, TimeProvider time)
{
    /// <summary>Keeps one study inside a change.</summary>
    public GaugeStudyKept Keep(IWriteSession session, Instrument instrument, StudyRequest sent)
    {
        var complaints = new Complaints();
        var dimension = DimensionOf(sent, instrument, complaints);
        var readings = sent.Readings
            .Select((r, i) => new GaugeReading(r.Appraiser, r.Part, Points.Si(r.Reading, dimension, Pointer.Entry("/readings", i) + "/reading", complaints)))
            .ToImmutableArray();
        complaints.ThrowIfAny(Problems.InvalidContent);
        var result = Refusal.At("/readings", () => GaugeStudy.ByAnova(readings, (double)sent.PoolAbove));
        var found = result.Capability(sent.Kind, sent.Characteristic, 1) with { Family = sent.Family };
        var kept = new GaugeStudyKept(
            sent.Id ?? ids.Next(), instrument.State.Id,
            [.. sent.Readings.Select(r => new StudyReading(r.Appraiser, r.Part, r.Reading.Value.Text, r.Reading.Unit))], (double)sent.PoolAbove, found, sent.Person, time.GetUtcNow());
        session.Add(kept);
        session.Put(instrument with { State = instrument.State with { Studies = With(instrument.State.Studies, found) } }, null);
        return kept;
    }

    /// <summary>A study as it goes out, its result worked out anew from the readings.</summary>
    public static StudyWire Shown(GaugeStudyKept kept, Dimension dimension, Display show)
    {
        var readings = kept.Readings.Select(r => new GaugeReading(r.Appraiser, r.Part, QuantityText.Read(r.AsSent, r.Unit, dimension).Quantity!.InSi)).ToImmutableArray();
        var result = GaugeStudy.ByAnova(readings, kept.PoolAbove);
        return new(
            kept.Id, kept.Instrument, StudiedWire.From(kept.Found, dimension, show), GaugeStudyWire.From(result, dimension, null, show),
            [.. kept.Readings.Select(StudyReadingWire.From)], kept.Person, kept.At);
    }

    private static ImmutableArray<GaugeCapability> With(IReadOnlyList<GaugeCapability>? studies, GaugeCapability found) =>
    [
        .. (studies ?? []).Where(s => s.Family != found.Family || s.Kind != found.Kind || s.Characteristic != found.Characteristic),
        found,
    ];

    private Dimension DimensionOf(StudyRequest sent, Instrument instrument, Complaints complaints)
    {
        var dimension = instrument.State.Resolution.Kind;
        if (families.Find(sent.Family) is not { } family)
            complaints.AddUnknown("/family", Problems.UnknownFamily, $"There is no family {sent.Family}.", sent.Family, [.. families.All.Select(f => f.Family.Version.Id)]);
        else if (!family.Kinds.TryGetValue(sent.Kind, out var kind))
            complaints.AddUnknown("/kind", FieldProblems.UnknownKind, $"The family has no kind {sent.Kind}.", sent.Kind, family.Kinds.Keys);
        else if (family.CharacteristicOf(sent.Kind, sent.Characteristic) is not { } known)
            complaints.AddUnknown("/characteristic", FieldProblems.UnknownCharacteristic, $"A {sent.Kind} has no characteristic {sent.Characteristic}.", sent.Characteristic, [.. kind.Characteristics.Select(c => c.Id)]);
        else if (known.Dimension != dimension)
            complaints.Add("/characteristic", FieldProblems.WrongDimension, "The instrument does not measure this.", sent.Characteristic);
        return dimension;
    }
}
