using System.Collections.Immutable;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage;

/// <summary>Something that was committed. Events are the entries of the hash chain, so none can be missed, doubled or reordered.</summary>
/// <param name="Sequence">Grows by one with each.</param>
/// <param name="At">When, UTC.</param>
/// <param name="Actor">Who.</param>
/// <param name="Kind">What: <c>unit</c>, <c>component</c>, <c>placement</c>, <c>measurement</c>, <c>trial</c>, <c>finding</c>, <c>decision</c>, <c>instrument</c>, <c>judgement</c>,
/// and those of the shop's own records: <c>rates</c>, <c>part</c>, <c>stock</c>, <c>reservation</c>, <c>plan</c>, <c>plan-choice</c>, <c>quote</c>,
/// <c>approval</c>, <c>invoice-line</c>, <c>machining</c>, <c>work</c>,
/// <c>calibration</c>, <c>study</c>, <c>comeback</c>, <c>policy</c>, <c>test</c>, <c>confirmation</c>, <c>prior</c>,
/// <c>stage</c>, <c>sign-off</c>, <c>attachment</c>, <c>label</c>, <c>removal</c>, <c>webhook</c>, <c>token</c>, <c>erasure</c>, <c>sharing</c>, and those of <see cref="Acts"/>.</param>
/// <param name="Unit">The unit that it belongs to; empty when to none.</param>
/// <param name="Id">Id of the thing; of a placement its place.</param>
public sealed record StoreEvent(long Sequence, DateTimeOffset At, string Actor, string Kind, string Unit, string Id)
{
    /// <summary>The kinds that there are. What is told of another unit's part ends in <c>-elsewhere</c>.</summary>
    public static ImmutableArray<string> Kinds { get; } =
        [.. IndexedTable.All.Select(t => t.Kind), .. Acts.All, "vacancy", "component-elsewhere", "measurement-elsewhere", "finding-elsewhere"];
}
