using System.Collections.Immutable;
using RebuildApi.Engine.Money;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>How the shop charges, as the engine counts.</summary>
public static class ShopRates
{
    /// <summary>What stands until the shop has said how it charges: no currency (ISO 4217 XXX), nothing for labour, no tax.</summary>
    public static Rates Unset { get; } = new("XXX", 2, "half-up", "per-line", [new Tax("none", "O", 0)], 0, "none", "none", 0, 0, 30, 72, 0);

    /// <summary>The rates inside a change.</summary>
    public static Rates Rates(this IWriteSession session) => session.Find<Rates>(Storage.Rates.TheId) ?? Unset;

    /// <summary>The rates.</summary>
    public static async ValueTask<Rates> Rates(this IStore store, CancellationToken cancellation) => await store.Find<Rates>(Storage.Rates.TheId, cancellation) ?? Unset;

    /// <summary>How amounts are rounded.</summary>
    public static MoneyRules Rules(this Rates rates) => new(
        rates.Currency,
        rates.Digits,
        rates.Rounding == "half-even" ? Rounding.HalfEven : Rounding.HalfUp,
        rates.TaxRounding == "per-rate" ? TaxRounding.PerRate : TaxRounding.PerLine);

    /// <summary>A rate of tax by its id.</summary>
    public static Tax TaxOf(this Rates rates, string id) => rates.Taxes.First(t => t.Id == id);

    /// <summary>The tax of a part.</summary>
    public static Tax TaxOfPart(this Rates rates, string? own) => rates.Taxes.FirstOrDefault(t => t.Id == own) ?? rates.TaxOf(rates.PartsTax);

    /// <summary>An amount that was sent, which must be in the shop's currency.</summary>
    public static long Amount(this Rates rates, MoneyRequest? sent, string pointer, Complaints complaints)
    {
        if (sent is null)
            return 0;
        if (sent.Currency != rates.Currency)
        {
            complaints.Add(pointer + "/currency", FieldProblems.NotAllowed, $"The shop counts in {rates.Currency}.", sent.Currency, [rates.Currency],
                rates.Version == 0 ? "Say how the shop charges first: PATCH /v1/rates." : null);
        }

        return sent.Minor;
    }

    /// <summary>A tax that was sent, which must be one of the shop's.</summary>
    public static string? CheckTax(this Rates rates, string? tax, string pointer, Complaints complaints)
    {
        if (tax is not null && !rates.Taxes.Any(t => t.Id == tax))
            complaints.AddUnknown(pointer, FieldProblems.NotAllowed, $"The shop has no tax {tax}.", tax, [.. rates.Taxes.Select(t => t.Id)]);
        return tax;
    }
}
