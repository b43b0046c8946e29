using System.Collections.Immutable;
using System.Text.Json.Nodes;
using RebuildApi.Contracts;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Requests.Tables;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Shop;

/// <summary>Something on the shelf: new parts and pieces by count, or one measured used part.</summary>
/// <param name="Id">What is written on it or its bin.</param>
/// <param name="Family">The family whose kind it is.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Origin">New, a used part, or out of a core.</param>
/// <param name="Count">How many there are.</param>
/// <param name="Price">What one is charged at, without tax.</param>
/// <param name="Part">Its number in the price list.</param>
/// <param name="Member">Which piece of a series it is.</param>
/// <param name="Set">What it ran with: parts of one set bear the same name here.</param>
/// <param name="Core">The unit that it was taken from.</param>
/// <param name="Bin">Where it lies.</param>
/// <param name="Attributes">Attribute to value, as found.</param>
/// <param name="Readings">What was read of it.</param>
/// <param name="Inspected">Whether it was inspected as the family asks and found sound.</param>
/// <param name="Person">Who says so.</param>
/// <param name="Version">Grows by one with every change; the ETag carries it.</param>
public sealed record StockWire(
    string Id,
    string Family,
    string Kind,
    Origin Origin,
    int Count,
    MoneyWire Price,
    string? Part,
    string? Member,
    string? Set,
    string? Core,
    string? Bin,
    IReadOnlyDictionary<string, string> Attributes,
    ImmutableArray<StockReadingWire> Readings,
    bool Inspected,
    string Person,
    long Version)
{
    /// <summary>How many are kept for units now.</summary>
    public int Reserved { get; init; }

    /// <summary>How many can be taken.</summary>
    public int Free => Math.Max(0, Count - Reserved);

    /// <summary>From the store.</summary>
    public static StockWire From(StockItem s, int reserved, Rates rates, Display show) => new(
        s.Id, s.Family, s.Kind, s.Origin, s.Count, MoneyWire.Of(s.Price, rates), s.Part, s.Member, s.Set, s.Core, s.Bin, s.Attributes,
        [.. s.Readings.Select(r => StockReadingWire.From(r, show))], s.Inspected, s.Person, s.Version)
    { Reserved = reserved };
}

/// <summary>What was read of one characteristic of a part on the shelf.</summary>
/// <param name="Characteristic">Which.</param>
/// <param name="Readings">The readings.</param>
/// <param name="Instrument">With what.</param>
public sealed record StockReadingWire(string Characteristic, ImmutableArray<ReadingWire> Readings, string? Instrument) : IInWords
{
    /// <summary>From the store.</summary>
    public static StockReadingWire From(StockReading r, Display show)
    {
        var dimension = r.Readings.Any(x => x.Si is not null) ? Dimension.Ratio : Dimension.Length;
        return new(r.Characteristic, [.. r.Readings.Select(x => ReadingWire.From(x, dimension, show))], r.Instrument);
    }

    /// <inheritdoc/>
    public string InWords() => $"{Characteristic}={string.Join(", ", Readings.Select(r => r.InWords()))}{(Instrument is null ? "" : " @" + Instrument)}";
}

/// <summary>Something to be put on the shelf, or one row of a stock list.</summary>
/// <param name="Id">What is written on it or its bin.</param>
/// <param name="Family">The family whose kind it is.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Count">How many there are.</param>
/// <param name="Price">What one is charged at, without tax.</param>
/// <param name="Person">Who says so.</param>
/// <param name="Origin">New, a used part, or out of a core.</param>
/// <param name="Part">Its number in the price list.</param>
/// <param name="Member">Which piece of a series it is.</param>
/// <param name="Set">What it ran with: parts of one set bear the same name here.</param>
/// <param name="Core">The unit that it was taken from.</param>
/// <param name="Bin">Where it lies.</param>
/// <param name="Attributes">Attribute to value, as found. What is left out is unknown, and unknown is never good.</param>
/// <param name="Readings">What was read of it; only of a single part.</param>
/// <param name="Inspected">Whether it was inspected as the family asks and found sound.</param>
/// <param name="Version">The version that the row was exported at; when it is said, what was changed since is not overwritten.</param>
public sealed record StockRequest(
    [Id] string Id,
    [Id] string Family,
    [Id] string Kind,
    [Between(0, 1_000_000)] int Count,
    MoneyRequest Price,
    [Words(100)] string Person,
    Origin Origin = Origin.Shelf,
    [Id] string? Part = null,
    [Words(64)] string? Member = null,
    [Words(64)] string? Set = null,
    [Id] string? Core = null,
    [Words(60)] string? Bin = null,
    IReadOnlyDictionary<string, string>? Attributes = null,
    [Entries(0, 200)] ImmutableArray<StockReadingRequest>? Readings = null,
    bool Inspected = false,
    [Between(0, 2_000_000_000)] int? Version = null);

/// <summary>A stock list to be taken over.</summary>
/// <param name="Rows">Its rows.</param>
public sealed record StockListRequest([Entries(1, 5000)] ImmutableArray<StockRequest> Rows) : IRows<StockRequest>;

/// <summary>What was read of one characteristic.</summary>
/// <param name="Characteristic">Which.</param>
/// <param name="Readings">The readings.</param>
/// <param name="Instrument">With what.</param>
public sealed record StockReadingRequest(
    [Words(64)] string Characteristic, [Entries(1, 100)] ImmutableArray<ReadingRequest> Readings, [Id] string? Instrument = null) : IFromCell
{
    private static readonly string[] Bounds = [">=", "<="];

    /// <inheritdoc/>
    public static JsonNode FromCell(string entry)
    {
        var (name, rest) = Split(entry, '=');
        var (values, instrument) = rest.LastIndexOf('@') is var at and >= 0 ? (rest[..at], rest[(at + 1)..].Trim()) : (rest, null);
        var read = new JsonObject
        {
            ["characteristic"] = name,
            ["readings"] = new JsonArray([.. values.Split(',', StringSplitOptions.TrimEntries).Select(Reading)]),
        };
        if (instrument is not null)
            read["instrument"] = instrument;
        return read;
    }

    private static JsonNode Reading(string text)
    {
        if (text == "tight")
            return new JsonObject { ["tight"] = true };
        var bound = Bounds.FirstOrDefault(b => text.StartsWith(b, StringComparison.Ordinal));
        var (number, unit) = Split((bound is null ? text : text[2..]).Trim(), ' ');
        var quantity = new JsonObject { ["value"] = RowJson.Number(number), ["unit"] = unit };
        return bound is null ? quantity : new JsonObject { [bound == ">=" ? "atLeast" : "atMost"] = quantity };
    }

    private static (string Before, string After) Split(string text, char at)
    {
        var i = text.IndexOf(at, StringComparison.Ordinal);
        return i < 0 ? (text.Trim(), "") : (text[..i].Trim(), text[(i + 1)..].Trim());
    }
}

/// <summary>Changes of something on the shelf; what is left out stays, null takes away.</summary>
/// <param name="Count">How many there are now.</param>
/// <param name="Price">What one is charged at, without tax.</param>
/// <param name="Bin">Where it lies.</param>
/// <param name="Attributes">Attribute to value; all of them.</param>
/// <param name="Readings">What was read of it; all of it.</param>
/// <param name="Inspected">Whether it was inspected as the family asks and found sound.</param>
/// <param name="Person">Who says so.</param>
public sealed record StockChangeRequest(
    [Between(0, 1_000_000)] int? Count = null,
    MoneyRequest? Price = null,
    [Words(60)] string? Bin = null,
    IReadOnlyDictionary<string, string>? Attributes = null,
    [Entries(0, 200)] ImmutableArray<StockReadingRequest>? Readings = null,
    bool? Inspected = null,
    [Words(100)] string? Person = null);
