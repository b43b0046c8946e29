using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>Something that was committed.</summary>
/// <param name="Sequence">Grows with each; also the id of the event.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Person">Who.</param>
/// <param name="Kind">What sort of thing: <c>unit</c>, <c>measurement</c>, <c>finding</c>, <c>trial</c>, <c>decision</c>, <c>instrument</c> and so on.</param>
/// <param name="Unit">The unit that it belongs to; absent when to none.</param>
/// <param name="Id">Id of the thing.</param>
public sealed record EventWire(long Sequence, DateTimeOffset Time, string Person, string Kind, string? Unit, string Id)
{
    /// <summary>From the store.</summary>
    public static EventWire From(StoreEvent e) => new(e.Sequence, e.At, e.Actor, e.Kind, e.Unit.Length == 0 ? null : e.Unit, e.Id);
}
