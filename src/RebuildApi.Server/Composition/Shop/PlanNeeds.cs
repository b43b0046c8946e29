using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>What a plan needs, as lines to quote and to order: parts, pieces, core deposits, labour, and what may come if a doubtful part proves bad.</summary>
public sealed class PlanNeeds(Offers offers, FamilyIndex family, Display show)
{
    private const string Required = "required";

    // A smaller risk is not worth a line of its own.
    private const decimal LeastChance = 0.01m;

    /// <summary>The lines, in stripping order, labour after parts.</summary>
    public ImmutableArray<Needed> Of(Plan plan) =>
    [
        .. plan.Lines.SelectMany(Taken).GroupBy(t => t.Id, StringComparer.Ordinal).SelectMany(Goods),
        .. plan.Work.GroupBy(w => w.Position is null ? w.Operation : $"{w.Operation}/{Subjects.Of(w.Position, w.Index)}", StringComparer.Ordinal).Select(Labour),
        .. plan.Lines.Where(l => l.Source is not (PartSource.Catalogue or PartSource.ToBeBought)).Select(IfBad).OfType<Needed>(),
    ];

    /// <summary>Everything that goes into one place, by where it comes from.</summary>
    private IEnumerable<(string Id, PlanLine Line)> Taken(PlanLine line) => line.Source switch
    {
        PartSource.Found or PartSource.Rework => [],
        _ when line.Members.IsEmpty => [(line.Candidate, line)],
        _ => line.Candidate.Split('+').Select(piece => (PieceId(piece), line)),
    };

    private string PieceId(string piece)
    {
        var slash = piece.IndexOf('/', StringComparison.Ordinal);
        return offers.PieceIds.TryGetValue((piece[..slash], piece[(slash + 1)..]), out var id) ? id : piece;
    }

    private IEnumerable<Needed> Goods(IGrouping<string, (string Id, PlanLine Line)> taken)
    {
        ImmutableArray<string> positions = [.. taken.Select(t => Subjects.Of(t.Line.Position, t.Line.Index)).Distinct()];
        var rates = offers.Rates;
        if (offers.Parts.TryGetValue(taken.Key, out var part))
        {
            var tax = rates.TaxOfPart(part.Tax);
            yield return Piece("part/" + part.Id, "part", part.Name, taken.Count(), part.Price, tax, positions) with { Part = part.Id };
            if (part.CoreDeposit > 0)
                yield return Piece("core/" + part.Id, "core-deposit", $"Deposit until the old part is handed back: {part.Name}", taken.Count(), part.CoreDeposit, tax, positions) with { Part = part.Id };
        }
        else if (offers.Shelf.TryGetValue(taken.Key, out var item))
        {
            var name = show.Words(family.Kinds[item.Kind].Name) + (item.Member is { } member ? " " + member : "");
            yield return Piece("stock/" + item.Id, "stock", name, taken.Count(), item.Price, rates.TaxOfPart(null), positions) with { Stock = item.Id };
        }
        else
        {
            var kind = family.KindAt(taken.First().Line.Position)!;
            var first = taken.First().Line;
            var name = show.Words(kind.Name) + (!first.Members.IsEmpty ? " " + taken.Key : first.Components[0].Label is { } label ? ": " + label : "");
            yield return Piece("new/" + taken.Key, "part", name, taken.Count(), taken.First().Line.Price, rates.TaxOfPart(null), positions);
        }
    }

    private Needed Labour(IGrouping<string, PlanWork> work)
    {
        var (first, rates) = (work.First(), offers.Rates);
        return new Needed(
            "labour/" + work.Key, "labour", show.Words(family.Operations[first.Operation].Name), Required, 1, work.Sum(w => w.Minutes), "minute", rates.LabourPerHour, 60,
            rates.TaxOf(rates.LabourTax), first.Position is { } position ? [Subjects.Of(position, first.Index)] : [], null, null, first.Operation);
    }

    /// <summary>A used part that is not proven good may prove bad; then what the plan has as the next best for its place is needed instead.</summary>
    private Needed? IfBad(PlanLine line)
    {
        if (offers.Rates.ComebackCost == 0 || line.NextBest is not { } next || !offers.Parts.TryGetValue(next.Candidate, out var part))
            return null;
        var chance = Math.Round(Math.Min(1m, (decimal)line.Comeback / offers.Rates.ComebackCost), 4);
        if (chance < LeastChance)
            return null;
        var place = Subjects.Of(line.Position, line.Index);
        var name = show.Words(family.Positions[line.Position].Name);
        return Piece("if-bad/" + place, "part", $"If the used part at {name} proves bad: {part.Name}", 1, part.Price, offers.Rates.TaxOfPart(part.Tax), [place])
            with
        { Part = part.Id, Need = "recommended", Chance = chance };
    }

    private static Needed Piece(string id, string sort, string text, int count, long? price, Tax tax, ImmutableArray<string> positions) =>
        new(id, sort, text, Required, 1, count, "piece", price, 1, tax, positions, null, null, null);
}
