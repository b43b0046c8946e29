using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>What would settle the inconclusive verdicts of a unit, with the instruments that the shop has and that are in date.</summary>
public sealed class SettlingSheet(IStore store, Judging judging, TimeProvider time)
{
    private const int AtOnce = 500;

    /// <summary>Each inconclusive verdict on a characteristic, in stripping order.</summary>
    /// <exception cref="Errors.ProblemException">The rules of the unit are not loaded.</exception>
    public async Task<ImmutableArray<SettlingWire>> Of(UnitFile file, CancellationToken cancellation)
    {
        var view = judging.View(file);
        var snapshot = view.Snapshot;
        var others = (await InDate(cancellation)).Where(i => snapshot.Instruments.All(known => known.Id != i.Id));
        var book = new EstimateBook(new UnitView(snapshot with { Instruments = [.. snapshot.Instruments, .. others] }, view.Family));
        return
        [
            .. from position in view.Family.Family.Positions.OrderBy(p => p.StripOrder)
               from placed in book.View.At(position.Id)
               from characteristic in view.Family.Kinds[placed.Component.Kind].Characteristics
               let verdict = CharacteristicJudge.Judge(placed, characteristic, book)
               where verdict is { Outcome: Outcome.Inconclusive }
               select SettlingWire.From(verdict, Settling.Steps(placed, characteristic, book)),
        ];
    }

    private async Task<ImmutableArray<InstrumentState>> InDate(CancellationToken cancellation)
    {
        var today = DateOnly.FromDateTime(time.GetUtcNow().UtcDateTime);
        var found = ImmutableArray.CreateBuilder<InstrumentState>();
        string? after = null;
        do
        {
            var page = await store.Instruments(after, AtOnce, cancellation);
            found.AddRange(page.Items.Select(i => i.State).Where(s => !(s.CalibrationDue < today)));
            after = page.Next;
        }
        while (after is not null);

        return found.ToImmutable();
    }
}
