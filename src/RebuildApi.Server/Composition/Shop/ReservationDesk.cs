using System.Collections.Immutable;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Keeps things on the shelf for a unit, inside one change: all that is asked for, or nothing.</summary>
public sealed class ReservationDesk(IWriteSession session, IIdSource ids, DateTimeOffset now)
{
    /// <summary>Keeps what is named, or what a plan takes from the shelf.</summary>
    public ImmutableArray<Reservation> Keep(string unit, ReservationsRequest sent)
    {
        var wanted = sent.Items is { } items ? [.. items.Select((x, i) => (x.Stock, x.Count, At: $"/items/{i}"))] : Picks(unit, sent.Plan);
        var complaints = new Complaints();
        foreach (var (stock, _, at) in wanted.Where(w => session.Find<StockItem>(w.Stock) is null))
            complaints.Add(at + "/stock", FieldProblems.UnknownStock, $"Nothing of the id {stock} is on the shelf.", stock);
        complaints.ThrowIfAny(Problems.InvalidContent);
        var until = now.AddHours(sent.Hours ?? session.Rates().ReservationHours);
        return [.. wanted.GroupBy(w => w.Stock, StringComparer.Ordinal).Select(g => Keep(unit, g.Key, g.Sum(w => w.Count), sent.Person, until))];
    }

    /// <summary>Refuses to keep more than is on the shelf and not kept for other units.</summary>
    public void RequireFree(string unit, string stock, int count)
    {
        var free = session.Find<StockItem>(stock)!.Count - Reserved.Of(session.All<Reservation>(about: stock), now, unit).Count(stock);
        if (free < count)
            throw new ProblemException(Problems.StockShort, $"{Math.Max(0, free)} of {stock} are free; {count} are asked for.");
    }

    private Reservation Keep(string unit, string stock, int count, string person, DateTimeOffset until)
    {
        var standing = session.All<Reservation>(about: stock);
        // What this unit keeps already counts for it: asking twice holds it longer and takes no more.
        var own = standing.FirstOrDefault(r => r.Unit == unit && r.Holds(now));
        RequireFree(unit, stock, count);
        return own is null
            ? session.Put(new Reservation(ids.Next(), unit, stock, count, person, until, false, 0), 0)
            : session.Put(own with { Count = count, Person = person, Until = until }, own.Version);
    }

    private (string Stock, int Count, string At)[] Picks(string unit, string? named)
    {
        var chosen = named ?? session.All<PlanChoice>(unit).LastOrDefault()?.Plan ?? session.All<KeptPlan>(unit).LastOrDefault(p => !p.Lines.IsEmpty)?.Id;
        var plan = chosen is null ? null : session.Find<KeptPlan>(chosen);
        if (plan is null || plan.Unit != unit)
            throw new ProblemException(Problems.UnknownPlan, "The unit has no such plan.");
        return [.. plan.Lines.Where(l => l.Stock is not null).Select(l => (l.Stock!, (int)l.Quantity, "/plan"))];
    }
}
