using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>Another shop that has opened something to this one.</summary>
/// <param name="Shop">Which.</param>
/// <param name="Opens">What.</param>
public sealed record OpenedShop(string Shop, ImmutableArray<Opening> Opens);

/// <summary>A page of another shop's shelf.</summary>
/// <param name="Items">What lies there.</param>
/// <param name="Reservations">What of it is kept for units, or was.</param>
public sealed record OpenedStock(Page<StockItem> Items, ImmutableArray<Reservation> Reservations);

/// <summary>A unit of another shop, without what names a customer.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Latest">Its latest kept judgement; null when none was kept.</param>
public sealed record OpenedUnit(Unit Unit, OpenedJudgement? Latest);

/// <summary>A kept judgement of another shop, without the snapshot that it was made from.</summary>
/// <param name="Kept">When and for what.</param>
/// <param name="Body">The judgement as JSON, byte for byte as it was kept.</param>
public sealed record OpenedJudgement(JudgementKept Kept, ReadOnlyMemory<byte> Body);
