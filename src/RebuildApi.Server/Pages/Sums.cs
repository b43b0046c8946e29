using System.Globalization;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>Sums of money as a person reads them.</summary>
public sealed class Sums(Rates rates)
{
    /// <summary>A sum with its currency.</summary>
    public string Of(MoneyWire? sum) => sum is null
        ? ""
        : (sum.Minor / (decimal)Math.Pow(10, rates.Digits)).ToString("#,##0." + new string('0', rates.Digits), CultureInfo.InvariantCulture).TrimEnd('.') + "\u00a0" + sum.Currency;
}
