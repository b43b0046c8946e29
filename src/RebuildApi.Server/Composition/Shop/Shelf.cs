using RebuildApi.Contracts;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>A used part keeps its id on the shelf, so that it can't lie there and be in a gearbox at once.</summary>
public static class Shelf
{
    /// <summary>A part that goes into a gearbox leaves the shelf.</summary>
    public static void Take(IWriteSession session, Component component, DateTimeOffset now)
    {
        if (session.Find<StockItem>(component.Id) is { Count: > 0, Origin: not Origin.New } item && item.Kind == component.Kind)
            session.Put(item with { Count = 0, Time = now }, null);
    }

    /// <summary>Complains of a used part that is to lie on the shelf and is in a gearbox.</summary>
    public static void CheckFree(IWriteSession session, string id, Origin origin, int count, string pointer, Complaints complaints)
    {
        if (origin != Origin.New && count > 0 && session.UnitOf(id) is { } unit)
            complaints.Add(pointer, FieldProblems.Contradiction, $"The part {id} is in {unit}.", id, null, $"POST to its removals in {unit} first.");
    }
}
