using System.Collections.Immutable;
using System.Text.Json;
using RebuildApi.Contracts;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Sharing;

/// <summary>Another shop that has opened something to this one.</summary>
/// <param name="Shop">Which.</param>
/// <param name="Opens">What.</param>
public sealed record OpenedShopWire(string Shop, ImmutableArray<Opening> Opens)
{
    /// <summary>From the store.</summary>
    public static OpenedShopWire From(OpenedShop s) => new(s.Shop, s.Opens);
}

/// <summary>Something on another shop's shelf.</summary>
/// <param name="Shop">Whose it is.</param>
/// <param name="Id">What is written on it or its bin.</param>
/// <param name="Family">The family whose kind it is.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Origin">New, a used part, or out of a core.</param>
/// <param name="Count">How many there are.</param>
/// <param name="Reserved">How many are kept for that shop's units now.</param>
/// <param name="Part">Its number in that shop's price list.</param>
/// <param name="Member">Which piece of a series it is.</param>
/// <param name="Set">What it ran with: parts of one set bear the same name here.</param>
/// <param name="Attributes">Attribute to value, as found.</param>
/// <param name="Readings">What was read of it.</param>
/// <param name="Inspected">Whether it was inspected as the family asks and found sound.</param>
/// <param name="Version">Grows by one with every change.</param>
public sealed record OpenedStockWire(
    string Shop,
    string Id,
    string Family,
    string Kind,
    Origin Origin,
    int Count,
    int Reserved,
    string? Part,
    string? Member,
    string? Set,
    IReadOnlyDictionary<string, string> Attributes,
    ImmutableArray<StockReadingWire> Readings,
    bool Inspected,
    long Version)
{
    /// <summary>How many could be taken.</summary>
    public int Free => Math.Max(0, Count - Reserved);

    /// <summary>From the store.</summary>
    public static OpenedStockWire From(string shop, StockItem s, int reserved, Display show) => new(
        shop, s.Id, s.Family, s.Kind, s.Origin, s.Count, reserved, s.Part, s.Member, s.Set, s.Attributes,
        [.. s.Readings.Select(r => StockReadingWire.From(r, show))], s.Inspected, s.Version);
}

/// <summary>A gearbox in another shop. Whose it is, and what the owner said, is not told.</summary>
/// <param name="Shop">Where it is.</param>
/// <param name="Id">Its id.</param>
/// <param name="Tag">What is written on it.</param>
/// <param name="Family">The family and edition it is pinned to.</param>
/// <param name="Complaint">What is wrong with it.</param>
/// <param name="Stage">Where it is between intake and hand-over.</param>
/// <param name="Opened">When it was taken in, UTC.</param>
/// <param name="Version">Grows by one with every change of the unit or of anything in it.</param>
public sealed record OpenedUnitWire(
    string Shop, string Id, string Tag, FamilyEditionWire Family, ImmutableArray<SymptomSeenWire> Complaint, string Stage, DateTimeOffset Opened, long Version)
{
    /// <summary>From the store.</summary>
    public static OpenedUnitWire From(string shop, Unit u) =>
        new(shop, u.Id, u.Tag, FamilyEditionWire.From(u.Family), [.. u.Complaint.Select(SymptomSeenWire.From)], u.Stage, u.Opened, u.Version);
}

/// <summary>A gearbox in another shop, with what was last said of it.</summary>
/// <param name="Unit">The gearbox.</param>
/// <param name="Kept">When and for what its latest judgement was kept; absent when none was.</param>
/// <param name="Judgement">That judgement, as it was kept.</param>
public sealed record OpenedUnitFileWire(OpenedUnitWire Unit, KeptJudgementWire? Kept, JsonElement? Judgement)
{
    /// <summary>From the store.</summary>
    public static OpenedUnitFileWire From(string shop, OpenedUnit u) => new(
        OpenedUnitWire.From(shop, u.Unit),
        u.Latest is { } latest ? KeptJudgementWire.From(latest.Kept) : null,
        u.Latest is { } kept ? JsonElement.Parse(kept.Body.Span) : null);
}
