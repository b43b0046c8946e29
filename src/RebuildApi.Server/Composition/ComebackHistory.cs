using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Engine.Statistics;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.History;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>Comebacks counted over the shop's records. A unit counts once it was handed over, or came back.</summary>
public sealed class ComebackHistory(IStore store, ShopHistory history)
{
    private const int AtOnce = 500;

    /// <summary>How many units came back of those handed over; of one family, or of all.</summary>
    /// <exception cref="ProblemException">None was handed over yet.</exception>
    public async Task<ComebackRateWire> Rate(string? family, CancellationToken cancellation)
    {
        var laidTo = await LaidTo(cancellation);
        var units = new SortedDictionary<string, (int Hits, int Of)>(StringComparer.Ordinal);
        var subjects = new SortedDictionary<string, int>(StringComparer.Ordinal);
        await foreach (var unit in history.Units(family, cancellation))
        {
            if (!HasGoneOut(unit, laidTo))
                continue;
            var came = laidTo.TryGetValue(unit.Id, out var to);
            var (hits, of) = units.GetValueOrDefault(unit.Family.Id);
            units[unit.Family.Id] = (hits + (came ? 1 : 0), of + 1);
            foreach (var subject in to ?? [])
                subjects[subject] = subjects.GetValueOrDefault(subject) + 1;
        }

        var total = units.Values.Sum(u => u.Of);
        if (total == 0)
            throw TooFew("No unit was handed over yet.");
        return ComebackRateWire.From(
            Share.Counted(units.Values.Sum(u => u.Hits), total), true,
            [.. units.Select(u => new NamedShareWire(u.Key, ShareWire.From(Share.Counted(u.Value.Hits, u.Value.Of))))],
            [.. subjects.Select(s => new NamedShareWire(s.Key, ShareWire.From(Share.Counted(s.Value, total))))]);
    }

    /// <summary>What went out with its reading, and whether it came back for this. In SI.</summary>
    public async Task<ImmutableArray<ServiceHistory>> Of(FamilyIndex family, string kind, Characteristic characteristic, CancellationToken cancellation)
    {
        var laidTo = await LaidTo(cancellation);
        var parts = ImmutableArray.CreateBuilder<ServiceHistory>();
        await foreach (var unit in history.Units(family.Family.Version.Id, cancellation))
        {
            if (HasGoneOut(unit, laidTo) && await store.File(unit.Id, cancellation) is { } file && history.ViewOf(file) is { } view)
                parts.AddRange(Parts(view, kind, characteristic, laidTo.GetValueOrDefault(unit.Id)));
        }

        return parts.ToImmutable();
    }

    private static IEnumerable<ServiceHistory> Parts(UnitView view, string kind, Characteristic characteristic, ImmutableHashSet<string>? laidTo)
    {
        var book = new EstimateBook(view);
        return view.Family.Family.Positions.Where(p => p.Kind == kind)
            .SelectMany(p => view.At(p.Id))
            .Select(placed => (Placed: placed, Value: book.Read(placed, characteristic, characteristic.Report).Value))
            .Where(x => x.Value is not null)
            .Select(x => new ServiceHistory(x.Value!.InSi, laidTo is not null && IsFor(x.Placed.Placement, characteristic, laidTo)));
    }

    private static bool IsFor(Placement placement, Characteristic characteristic, ImmutableHashSet<string> laidTo)
    {
        var subject = Subjects.Of(placement);
        return laidTo.Contains(subject) || laidTo.Contains($"{subject}/{characteristic.Id}") || laidTo.Contains($"{placement.Position}/{characteristic.Id}");
    }

    private static bool HasGoneOut(Unit unit, Dictionary<string, ImmutableHashSet<string>> laidTo) => unit.Stage == UnitStages.HandedOver || laidTo.ContainsKey(unit.Id);

    /// <summary>Each unit that came back, with everything its comebacks were laid to.</summary>
    private async Task<Dictionary<string, ImmutableHashSet<string>>> LaidTo(CancellationToken cancellation)
    {
        var laidTo = new Dictionary<string, ImmutableHashSet<string>>(StringComparer.Ordinal);
        string? after = null;
        do
        {
            var page = await store.Comebacks(null, after, AtOnce, cancellation);
            foreach (var comeback in page.Items)
                laidTo[comeback.Unit] = laidTo.GetValueOrDefault(comeback.Unit, []).Union(comeback.Confirmed.Select(c => c.Subject));
            after = page.Next;
        }
        while (after is not null);

        return laidTo;
    }

    private static ProblemException TooFew(string words) => new(Problems.NotComputable, words, [new FieldError("query/family", FieldProblems.BadCount.Code, words)]);
}
