using System.Collections.Immutable;
using RebuildApi.Engine.Money;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Writes lines for the invoicing tool, inside one change: those that were agreed to, voids, and what was added within the agreed share.</summary>
public sealed class InvoiceDesk(IWriteSession session, IIdSource ids, DateTimeOffset now)
{
    private readonly Complaints _complaints = new();

    /// <summary>The lines that were written, and whether what is now invoiced is what was agreed to.</summary>
    /// <exception cref="ProblemException">Nothing was agreed to, a line is not there, or the customer must be asked again.</exception>
    public (ImmutableArray<InvoiceLine> Lines, Reconciliation Reconciliation, Rates Rates) Write(string unit, InvoiceRequest sent)
    {
        var standing = Standing.Of(session, unit) ?? throw QuoteDesk.UnknownQuote();
        if (standing.Governing is not { } quote)
            throw new ProblemException(Problems.QuoteOvertaken, "Nobody has agreed to the quote yet.");
        var before = session.All<InvoiceLine>(unit);
        ImmutableArray<InvoiceLine> written =
        [
            .. Voids(sent, before),
            .. Agreed(sent, standing, quote, before),
            .. Extras(sent, quote),
        ];
        _complaints.ThrowIfAny(Problems.InvalidContent);
        var held = standing.Reconcile(before.Concat(written))!;
        if (held.NeedsApproval)
            throw new ProblemException(Problems.ApprovalNeeded, string.Join(" ", held.Reasons.Select(Engine.Reasons.ReasonText.Words)));
        return ([.. written.Select(l => session.Put(l, 0))], held, quote.Rates);

        InvoiceLine Line(Needed what, long net, long tax, string? of, string? voids, string quoted) =>
            new(ids.Next(), unit, quoted, of, what, net, tax, quote.Rates.Currency, quote.Rates.Digits, voids, sent.Person, now);

        IEnumerable<InvoiceLine> Voids(InvoiceRequest request, ImmutableArray<InvoiceLine> lines) => (request.Voids ?? []).Select((id, i) => Void(id, i, lines))
            .OfType<InvoiceLine>().Select(l => Line(l.What with { Quantity = -l.What.Quantity }, -l.Net, -l.TaxAmount, l.Of, l.Id, l.Quote));

        IEnumerable<InvoiceLine> Agreed(InvoiceRequest request, Standing agreement, Quote governing, ImmutableArray<InvoiceLine> lines)
        {
            var needed = governing.Lines.ToDictionary(l => l.Id, StringComparer.Ordinal);
            return Wanted(request, agreement, lines).Select(p => Line(needed[p.Line.Id], p.Net, p.Tax, p.Line.Id, null, governing.Id));
        }

        IEnumerable<InvoiceLine> Extras(InvoiceRequest request, Quote governing)
        {
            var extras = (request.Extras ?? []).Select((e, i) => Quoting.Extra(e, governing.Rates, $"/extras/{i}", _complaints)).ToArray();
            return Pricing.Price(extras.Select(e => e.Line()), governing.Rates.Rules()).Select((p, i) => Line(extras[i], p.Net, p.Tax, null, null, governing.Id));
        }
    }

    /// <summary>The agreed lines that are asked for and stand on no invoice: all of them where none is named.</summary>
    private IEnumerable<PricedLine> Wanted(InvoiceRequest sent, Standing standing, ImmutableArray<InvoiceLine> before)
    {
        var gone = (sent.Voids ?? []).ToHashSet(StringComparer.Ordinal);
        var standingLines = Counting(before).Where(l => !gone.Contains(l.Id)).Select(l => l.Of).ToHashSet(StringComparer.Ordinal);
        var agreed = standing.Lines.ToDictionary(l => l.Line.Id, StringComparer.Ordinal);
        if (sent.Lines is not { } named)
            return sent.Voids is null && sent.Extras is null ? agreed.Values.Where(l => !standingLines.Contains(l.Line.Id)) : [];
        foreach (var (line, i) in named.Select((l, i) => (l, i)))
        {
            if (!agreed.ContainsKey(line))
                _complaints.AddUnknown($"/lines/{i}", FieldProblems.UnknownLine, $"{line} was not agreed to.", line, [.. agreed.Keys]);
            else if (standingLines.Contains(line))
                _complaints.Add($"/lines/{i}", FieldProblems.Contradiction, $"{line} is invoiced already; void it first.", line);
        }

        return named.Distinct().Where(agreed.ContainsKey).Select(l => agreed[l]);
    }

    private InvoiceLine? Void(string id, int i, ImmutableArray<InvoiceLine> before)
    {
        if (Counting(before).FirstOrDefault(l => l.Id == id) is { } line)
            return line;
        _complaints.AddUnknown($"/voids/{i}", FieldProblems.UnknownLine, $"No line {id} stands on the invoice.", id, [.. Counting(before).Select(l => l.Id)]);
        return null;
    }

    /// <summary>The lines that count: neither voids nor voided.</summary>
    public static IEnumerable<InvoiceLine> Counting(ImmutableArray<InvoiceLine> lines)
    {
        var voided = lines.Select(l => l.Voids).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return lines.Where(l => l.Voids is null && !voided.Contains(l.Id));
    }
}
