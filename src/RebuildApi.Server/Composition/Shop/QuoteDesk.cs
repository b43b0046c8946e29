using System.Collections.Immutable;
using RebuildApi.Engine.Money;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Makes quotes out of plans and takes approvals down, inside one change.</summary>
public sealed class QuoteDesk(IWriteSession session, IIdSource ids, DateTimeOffset now)
{
    /// <summary>A quote from a plan, with what is added to it.</summary>
    public Quote Make(string unit, QuoteRequest sent)
    {
        var (rates, complaints) = (session.Rates(), new Complaints());
        var plan = Plan(unit, sent.Plan);
        if (plan is null && sent.Extras is not { IsEmpty: false })
            throw new ProblemException(Problems.UnknownPlan, "There is no plan to price: work one out first, or send lines of your own.");
        var left = (sent.Leave ?? []).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<Needed> planned = [.. (plan?.Lines ?? []).Concat(OutsideWork(unit, rates))];
        Check(planned, sent, left, complaints);
        var prices = (sent.Prices ?? []).Select((p, i) => (p.Line, Amount: rates.Amount(p.Price, $"/prices/{i}/price", complaints)))
            .GroupBy(p => p.Line, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last().Amount, StringComparer.Ordinal);
        ImmutableArray<Needed> lines =
        [
            .. planned.Where(l => !left.Contains(l.Id)).Select(l => prices.TryGetValue(l.Id, out var price) ? l with { Price = price } : l),
            .. (sent.Extras ?? []).Select((e, i) => Quoting.Extra(e, rates, $"/extras/{i}", complaints)),
        ];
        foreach (var twice in lines.GroupBy(l => l.Id, StringComparer.Ordinal).Where(g => g.Count() > 1))
            complaints.Add("/extras", FieldProblems.DuplicateField, $"The line {twice.Key} is there twice.", twice.Key);
        complaints.ThrowIfAny(Problems.InvalidContent);
        var number = session.All<Quote>(unit).Length + 1;
        return session.Put(new Quote(ids.Next(), unit, number, plan?.Id, rates, lines, sent.Person, now, now.AddDays(rates.QuoteDays)), 0);
    }

    /// <summary>An approval of the newest quote.</summary>
    public Approval Approve(string unit, ApprovalRequest sent)
    {
        var quote = session.All<Quote>(unit).MaxBy(q => q.Number) ?? throw UnknownQuote();
        if (quote.Number != sent.Number)
            throw new ProblemException(Problems.QuoteOvertaken, $"The newest quote is number {quote.Number}, not {sent.Number}.");
        if (now >= quote.Expires)
            throw new ProblemException(Problems.QuoteOvertaken, "The prices of this quote no longer hold.");
        var (accepted, complaints) = ((sent.Lines ?? []).ToHashSet(StringComparer.Ordinal), new Complaints());
        var known = quote.Lines.Select(l => l.Id).ToArray();
        foreach (var (line, i) in (sent.Lines ?? []).Select((l, i) => (l, i)).Where(x => !known.Contains(x.l)))
            complaints.AddUnknown($"/lines/{i}", FieldProblems.UnknownLine, $"The quote has no line {line}.", line, known);
        foreach (var open in quote.OpenPrices())
            complaints.Add("/number", FieldProblems.Contradiction, $"The price of {open} is still to be asked for: quote again with it.", open);
        complaints.ThrowIfAny(Problems.InvalidContent);
        var agreed = quote.Agreed(accepted);
        return session.Put(
            new Approval(
                ids.Next(), unit, quote.Id, quote.Number, sent.By, sent.Person, now, [.. agreed.Select(l => new ApprovedLine(l.Line.Id, l.Net, l.Tax))],
                Totals.Of(agreed).Gross, quote.Rates.AgreedShare), 0);
    }

    /// <summary>The problem of a unit without a quote.</summary>
    public static ProblemException UnknownQuote() => new(Problems.UnknownQuote, "No quote was made for this unit.");

    private KeptPlan? Plan(string unit, string? named)
    {
        if (named is not null)
            return session.Find<KeptPlan>(named) is { } plan && plan.Unit == unit ? plan : throw new ProblemException(Problems.UnknownPlan, "The unit has no plan of this id.");
        var chosen = session.All<PlanChoice>(unit).LastOrDefault();
        return chosen is not null ? session.Find<KeptPlan>(chosen.Plan) : session.All<KeptPlan>(unit).LastOrDefault(p => !p.Lines.IsEmpty);
    }

    private IEnumerable<Needed> OutsideWork(string unit, Rates rates) => session.All<Machining>(unit).Where(m => m.Price > 0).Select(m => new Needed(
        "machining/" + m.Id, "machining", m.Instruction, "required", 1, 1, "piece", m.Price, 1, rates.TaxOf(rates.LabourTax), [m.Position], null, null, m.Operation));

    private static void Check(ImmutableArray<Needed> planned, QuoteRequest sent, HashSet<string> left, Complaints complaints)
    {
        var known = planned.Select(l => l.Id).ToArray();
        foreach (var (price, i) in (sent.Prices ?? []).Select((p, i) => (p, i)).Where(x => !known.Contains(x.p.Line)))
            complaints.AddUnknown($"/prices/{i}/line", FieldProblems.UnknownLine, $"The plan has no line {price.Line}.", price.Line, known);
        foreach (var (line, i) in (sent.Leave ?? []).Select((l, i) => (l, i)).Where(x => !known.Contains(x.l)))
            complaints.AddUnknown($"/leave/{i}", FieldProblems.UnknownLine, $"The plan has no line {line}.", line, known);
        foreach (var required in planned.Where(l => l.Need == "required" && left.Contains(l.Id)))
            complaints.Add("/leave", FieldProblems.Contradiction, $"{required.Id} is required: work out another plan instead.", required.Id);
    }
}
