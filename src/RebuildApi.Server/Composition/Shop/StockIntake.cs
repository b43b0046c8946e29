using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Takes in what lies on the shelf: what it names must exist, and only a single part can have readings of its own.</summary>
public sealed class StockIntake(FamilyBook families, IWriteSession session, Rates rates, DateTimeOffset now)
{
    /// <summary>The item; what is wrong with it is complained of.</summary>
    public StockItem Take(StockRequest sent, Func<string, string> at, Complaints complaints)
    {
        var attributes = sent.Attributes ?? ImmutableSortedDictionary<string, string>.Empty;
        var kind = ShopKind.Check(families, sent.Family, sent.Kind, sent.Member, attributes, at, complaints);
        if (sent.Part is { } part && session.Find<Part>(part) is null)
            complaints.Add(at("/part"), FieldProblems.UnknownPart, $"The price list has no {part}.", part);
        if (sent.Core is { } core && session.Unit(core) is null)
            complaints.Add(at("/core"), FieldProblems.UnknownRecord, $"No unit {core} was taken in.", core);
        if (sent.Origin == Origin.Unit)
            complaints.Add(at("/origin"), FieldProblems.NotAllowed, "What is on the shelf is new, shelf or core.", "unit", ["new", "shelf", "core"]);
        Shelf.CheckFree(session, sent.Id, sent.Origin, sent.Count, at("/id"), complaints);
        return new StockItem(
            sent.Id, sent.Family, sent.Kind, sent.Origin, sent.Count, rates.Amount(sent.Price, at("/price"), complaints), sent.Part, sent.Member, sent.Set,
            sent.Core, sent.Bin, attributes, Readings(kind, sent.Readings, sent.Count, at, complaints), sent.Inspected, sent.Person, now, 0);
    }

    /// <summary>An item with changes.</summary>
    public StockItem Change(StockItem item, Body<StockChangeRequest> body, Complaints complaints)
    {
        var (sent, given) = (body.Value, body.Given);
        var attributes = given.Contains("attributes") ? sent.Attributes ?? ImmutableSortedDictionary<string, string>.Empty : item.Attributes;
        var count = sent.Count ?? item.Count;
        Shelf.CheckFree(session, item.Id, item.Origin, count, "/count", complaints);
        var says = given.Contains("attributes") || given.Contains("readings");
        var kind = says ? ShopKind.Check(families, item.Family, item.Kind, item.Member, attributes, p => p, complaints) : null;
        return item with
        {
            Count = count,
            Price = sent.Price is null ? item.Price : rates.Amount(sent.Price, "/price", complaints),
            Bin = given.Contains("bin") ? sent.Bin : item.Bin,
            Attributes = attributes,
            Readings = given.Contains("readings") ? Readings(kind, sent.Readings, count, p => p, complaints) : item.Readings,
            Inspected = sent.Inspected ?? item.Inspected,
            Person = sent.Person ?? item.Person,
            Time = now,
        };
    }

    private ImmutableArray<StockReading> Readings(
        PartKind? kind, ImmutableArray<StockReadingRequest>? sent, int count, Func<string, string> at, Complaints complaints)
    {
        if (sent is not { IsEmpty: false } readings || kind is null)
            return [];
        if (count > 1)
            complaints.Add(at("/readings"), FieldProblems.Contradiction, "Readings are of one part: put each measured part on the shelf by itself, with count 1.");
        return [.. readings.Select((r, i) => Read(kind, r, Pointer.Entry("/readings", i), at, complaints)).OfType<StockReading>()];
    }

    private StockReading? Read(PartKind kind, StockReadingRequest sent, string pointer, Func<string, string> at, Complaints complaints)
    {
        if (kind.Characteristics.FirstOrDefault(c => c.Id == sent.Characteristic) is not { } characteristic)
        {
            complaints.AddUnknown(at(pointer + "/characteristic"), FieldProblems.UnknownCharacteristic, $"A {kind.Id} has no characteristic {sent.Characteristic}.",
                sent.Characteristic, [.. kind.Characteristics.Select(c => c.Id)]);
            return null;
        }

        if (characteristic.DerivedFrom is not null)
            complaints.Add(at(pointer + "/characteristic"), FieldProblems.Contradiction, $"{sent.Characteristic} follows from other characteristics and is not read itself.");
        if (sent.Instrument is { } instrument && session.Instrument(instrument) is null)
            complaints.Add(at(pointer + "/instrument"), FieldProblems.UnknownInstrument, $"No instrument {instrument} is registered.", instrument);
        var readings = sent.Readings.Select((r, i) => r.ToContract(characteristic.Dimension, at($"{pointer}/readings/{i}"), complaints)).ToArray();
        return readings.Contains(null) ? null : new StockReading(characteristic.Id, [.. readings.Select(r => r!)], sent.Instrument);
    }
}
