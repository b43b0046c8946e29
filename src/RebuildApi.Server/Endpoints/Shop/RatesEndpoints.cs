using System.Collections.Immutable;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>How the shop charges.</summary>
public static class RatesEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapRates(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("shop");
        group.Read("/rates", Get, "getRates", "How does the shop charge?",
            "Currency, rounding, taxes, labour, the agreed share, how long quotes and reservations hold, who sells. Until the shop has said so, there is no currency (XXX) and nothing is charged.").Tagged();
        group.Change("/rates", Change, "changeRates", "Say how the shop charges",
                "Changes the fields that are sent. Quotes keep the rates that they were made with. The currency stays once anything has a price.")
            .Needs(Scope.Office).Fails(Problems.InvalidContent)
            .Example("""
                { "currency": "EUR", "taxes": [{ "id": "standard", "category": "S", "percent": 20 }], "labourTax": "standard", "partsTax": "standard",
                  "labourPerHour": { "minor": 6000, "currency": "EUR" }, "comebackCost": { "minor": 45000, "currency": "EUR" }, "agreedSharePercent": 10 }
                """);
    }

    private static async Task<Found<RatesWire>> Get(IStore store, CancellationToken cancellation)
    {
        var rates = await store.Rates(cancellation);
        return new(RatesWire.From(rates), Etags.Of(Etags.Rates, rates.Version));
    }

    private static async Task<ChangedAnswer<RatesWire>> Change(HttpContext http, Body<RatesChangeRequest> body, IStore store, CancellationToken cancellation)
    {
        var expected = Writes.ExpectedVersion(http, Etags.Rates);
        var answer = await store.Write(body.Request, session =>
        {
            var now = session.Rates();
            if (expected is { } seen && seen != now.Version)
                throw Conflict(now, seen);
            var put = session.Put(Apply(body.Value, now, session), null);
            return Answer.Changed(RatesWire.From(put), Etags.Of(Etags.Rates, put.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static Rates Apply(RatesChangeRequest sent, Rates now, IWriteSession session)
    {
        var complaints = new Complaints();
        CheckCurrency(sent, now, session, complaints);
        var coming = now with { Currency = sent.Currency ?? now.Currency, Digits = sent.Digits ?? now.Digits };
        var changed = coming with
        {
            Rounding = sent.Rounding ?? now.Rounding,
            TaxRounding = sent.TaxRounding ?? now.TaxRounding,
            Taxes = sent.Taxes is { } taxes ? [.. taxes.Select(t => new Tax(t.Id, t.Category, t.Percent))] : now.Taxes,
            LabourPerHour = sent.LabourPerHour is null ? now.LabourPerHour : coming.Amount(sent.LabourPerHour, "/labourPerHour", complaints),
            LabourTax = sent.LabourTax ?? now.LabourTax,
            PartsTax = sent.PartsTax ?? now.PartsTax,
            AgreedShare = sent.AgreedSharePercent / 100 ?? now.AgreedShare,
            ComebackCost = sent.ComebackCost is null ? now.ComebackCost : coming.Amount(sent.ComebackCost, "/comebackCost", complaints),
            QuoteDays = sent.QuoteDays ?? now.QuoteDays,
            ReservationHours = sent.ReservationHours ?? now.ReservationHours,
            Seller = sent.Seller is { } s ? new Seller(s.Name, s.Street, s.City, s.PostCode, s.Country, s.TaxId) : now.Seller,
        };
        CheckTaxes(changed, complaints);
        if (sent.Seller is { Country: var country } && !(country.Length == 2 && country.All(char.IsAsciiLetterUpper)))
            complaints.Add("/seller/country", FieldProblems.BadText, "A country has two capital letters (ISO 3166-1 alpha-2).", country, ["IE"]);
        complaints.ThrowIfAny(Problems.InvalidContent);
        return changed;
    }

    private static void CheckCurrency(RatesChangeRequest sent, Rates now, IWriteSession session, Complaints complaints)
    {
        if (sent.Currency is { } code && !(code.Length == 3 && code.All(char.IsAsciiLetterUpper)))
            complaints.Add("/currency", FieldProblems.BadText, "A currency has three capital letters (ISO 4217).", code, ["EUR"]);
        var differs = (sent.Currency ?? now.Currency) != now.Currency || (sent.Digits ?? now.Digits) != now.Digits;
        if (differs && (session.All<Part>().Any() || session.All<StockItem>().Any() || session.All<Quote>().Any()))
            complaints.Add("/currency", FieldProblems.Contradiction, $"Prices in {now.Currency} stand already: the currency and its decimals stay.", sent.Currency);
    }

    private static void CheckTaxes(Rates rates, Complaints complaints)
    {
        foreach (var twice in rates.Taxes.GroupBy(t => t.Id, StringComparer.Ordinal).Where(g => g.Count() > 1))
            complaints.Add("/taxes", FieldProblems.DuplicateField, $"The tax {twice.Key} is there twice.", twice.Key);
        rates.CheckTax(rates.LabourTax, "/labourTax", complaints);
        rates.CheckTax(rates.PartsTax, "/partsTax", complaints);
    }

    private static ProblemException Conflict(Rates now, long seen) => new(Problems.VersionConflict, $"The rates are at version {now.Version}, not {seen}.")
    {
        Extras = new Dictionary<string, object> { ["currentVersion"] = now.Version, ["yourVersion"] = seen, ["current"] = RatesWire.From(now) }.ToExtras(),
        Headers = ImmutableSortedDictionary<string, string>.Empty.Add("ETag", Etags.Of(Etags.Rates, now.Version)),
    };
}
