using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Composition;

/// <summary>Takes one measurement of a batch in: finds the part, reads the quantities, and doubts what looks like a slip.</summary>
public sealed class MeasurementIntake(BenchWork work, MeasurementBatchRequest batch, string pointer)
{
    /// <summary>The measurement with its doubts, or null with complaints.</summary>
    public TakenIn? Take(MeasurementRequest sent)
    {
        if (Target(sent) is not { } target)
            return null;
        var (component, characteristic, at) = target;
        var readings = sent.Readings.Select((r, i) => r.ToContract(characteristic.Dimension, $"{pointer}/readings/{i}", work.Complaints)).ToArray();
        var taken = sent.Taken(batch).ToContract(pointer, work.Now, work.KnowsInstrument, work.Complaints);
        if (work.Complaints.Any)
            return null;
        var measurement = new Measurement(
            sent.Id ?? work.Ids.Next(), component.Id, component.Revision, characteristic.Id, [.. readings.Select(r => r!)], taken, sent.Supersedes);
        var instrument = taken.Instrument is { } id ? work.Session.Instrument(id)?.State : null;
        var doubts = Plausibility.Check(measurement, characteristic, work.Family.NewLimitsAt(at), work.Family.ServiceLimitsAt(at), instrument);
        return new TakenIn(measurement, doubts);
    }

    private (Component Component, Characteristic Characteristic, Address At)? Target(MeasurementRequest sent)
    {
        var (place, characteristic) = (sent.At, sent.Characteristic);
        if (sent.At is { } text)
        {
            if (Address.TryParse(text) is not { } address)
            {
                work.Complaints.Add(pointer + "/at", FieldProblems.BadAddress, FieldProblems.BadAddress.Cause, text, null, FieldProblems.BadAddress.Fix);
                return null;
            }

            (place, characteristic) = (address.Position, address.Characteristic);
        }

        if (work.Parts.Find(place, sent.Component, pointer, "at") is not { } component)
            return null;
        var position = place is null ? PositionOf(component) : Place.Parse(place).Position;
        return Characteristic(component, characteristic, sent.At is null ? "/characteristic" : "/at") is { } known
            ? (component, known, new Address(position, known.Id))
            : null;
    }

    private Characteristic? Characteristic(Component component, string? id, string field)
    {
        var kind = work.Family.Kinds.GetValueOrDefault(component.Kind);
        var known = id is null ? null : work.Family.CharacteristicOf(component.Kind, id);
        if (id is null)
            work.Complaints.Add(pointer + field, FieldProblems.MissingField, "The characteristic is missing.");
        else if (known is null)
            work.Complaints.AddUnknown(pointer + field, FieldProblems.UnknownCharacteristic, $"A {component.Kind} has no characteristic {id}.", id, [.. kind?.Characteristics.Select(c => c.Id) ?? []]);
        else if (known.DerivedFrom is not null)
            work.Complaints.Add(pointer + field, FieldProblems.Contradiction, $"{id} follows from other characteristics and is not read itself.", id);
        else
            return known;
        return null;
    }

    private string PositionOf(Component component) =>
        work.File.Placements.Where(p => p.Component == component.Id).OrderByDescending(p => p.Role).Select(p => p.Position).FirstOrDefault() ?? "";
}

/// <summary>A measurement that was taken in.</summary>
/// <param name="Measurement">What will be stored.</param>
/// <param name="Doubts">What looks like a slip.</param>
public sealed record TakenIn(Measurement Measurement, ImmutableArray<Doubt> Doubts);
