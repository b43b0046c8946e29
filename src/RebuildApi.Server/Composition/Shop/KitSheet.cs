using System.Collections.Immutable;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Turns a kept plan into what to order, what to take from the shelf, and how to put it together.</summary>
public sealed class KitSheet(KeptPlan plan, FamilyIndex family, Display show)
{
    private readonly PlanWire _answer = PlanDesk.Read(plan);

    /// <summary>The whole kit.</summary>
    /// <param name="parts">The price list.</param>
    /// <param name="stock">The shelf.</param>
    /// <param name="reservations">Everything that is kept.</param>
    /// <param name="rates">How the shop charges.</param>
    /// <param name="now">The time.</param>
    /// <param name="stillStands">Whether the plan still stands.</param>
    public KitWire Of(ImmutableArray<Part> parts, ImmutableArray<StockItem> stock, ImmutableArray<Reservation> reservations, Rates rates, DateTimeOffset now, bool stillStands) => new(
        plan.Unit, plan.Id, stillStands,
        [
            .. Orders(parts, rates).GroupBy(l => l.Vendor, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => new VendorOrderWire(g.Key, g.Max(l => l.LeadDays), MoneyWire.Of(g.Sum(l => l.Quantity * l.Price.Minor), rates), [.. g])),
        ],
        [.. plan.Lines.Where(l => l is { Sort: "part", Part: null }).Select(l => new ToAskForWire(l.Text, (int)l.Quantity, l.Positions))],
        [.. plan.Lines.Where(l => l.Stock is not null).Select(l => Pick(l, stock, reservations, now))],
        _answer.Work,
        [.. _answer.Lines.Select(Assembly)],
        FastenerWire.All(family.Family, show),
        LubricantWire.All(family.Family, show),
        _answer.Conditions,
        _answer.Cautions);

    /// <summary>The lines to order, as the price list has them now.</summary>
    public IEnumerable<OrderLineWire> Orders(ImmutableArray<Part> parts, Rates rates)
    {
        var known = parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        return plan.Lines.Where(l => l is { Sort: "part", Part: not null, Need: "required" }).Select(l => (Line: l, Part: known.GetValueOrDefault(l.Part!))).Where(x => x.Part is not null)
            .Select(x => new OrderLineWire(
                x.Part!.Vendor, x.Part.Id, x.Part.VendorNumber, x.Part.Name, (int)x.Line.Quantity, MoneyWire.Of(x.Part.Price, rates), x.Part.LeadDays, x.Line.Positions,
                [.. _answer.Lines.Where(p => x.Line.Positions.Contains(p.Position) && p.NextBest is not null).Select(p => new AlternativeWire(p.Position, p.NextBest!.Candidate, p.NextBest.Extra))]));
    }

    private PickWire Pick(Needed line, ImmutableArray<StockItem> stock, ImmutableArray<Reservation> reservations, DateTimeOffset now)
    {
        var item = stock.FirstOrDefault(s => s.Id == line.Stock);
        var own = reservations.Where(r => r.Stock == line.Stock && r.Unit == plan.Unit && r.Holds(now)).ToArray();
        var free = (item?.Count ?? 0) - Reserved.Of(reservations, now, plan.Unit).Count(line.Stock!);
        return new PickWire(
            line.Stock!, item?.Bin, line.Text, (int)line.Quantity, line.Positions, own.Length == 0 ? null : own.Min(r => r.Until), Math.Max(0, (int)line.Quantity - free));
    }

    private AssemblyWire Assembly(PlanLineWire line) => new(
        line.Position, line.Name, line.Candidate, line.Disposition, [.. line.Members.Select((m, i) => Piece(line, m, i))],
        [.. (family.Family.Fasteners ?? []).Where(f => f.Positions.Contains(line.Position)).Select(f => f.Id)]);

    private PieceWire Piece(PlanLineWire line, string member, int i)
    {
        var series = line.Candidate.Split('+')[i].Split('/')[0];
        return new PieceWire(member, show.Length(family.Series[series].Members.First(m => m.Id == member).Thickness));
    }
}
